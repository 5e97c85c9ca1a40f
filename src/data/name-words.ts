/** Letters that no accent can be taken off. */
const AS_LETTERS: Readonly<Record<string, string>> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l' }

/** The words of a text in small letters without accents, plurals made single. */
export function wordsOf(text: string): string[] {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[ßæœøł]/gu, (letter) => AS_LETTERS[letter] ?? letter)
    .replace(/[’']s\b/gu, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map(single)
}

function single(word: string): string {
  return word.length > 3 && word.endsWith('s') && !/(ss|us|is)$/u.test(word)
    ? word.slice(0, -1)
    : word
}

/** A name as it stands and, where it has dotted vowels, with an e for the dots, as many type it. */
export function spellings(name: string): string[] {
  const spelt = name.replace(/[äöü]/giu, (letter) => `${letter.normalize('NFKD').charAt(0)}e`)
  return spelt === name ? [name] : [name, spelt]
}
