/** Changes in percent begin with a minus, which would be taken for a flag: joins them to the flag before. */
export function joinMinus(args: readonly string[], flags: readonly string[]): string[] {
  const joined: string[] = []
  for (let at = 0; at < args.length; at++) {
    const [flag = '', value] = args.slice(at, at + 2)
    if (flags.includes(flag) && value !== undefined && /^-\d/u.test(value)) {
      joined.push(`${flag}=${value}`)
      at++
    } else joined.push(flag)
  }
  return joined
}
