import { type MassUnit, GRAMS_PER } from '../domain/units'

/** The forms a sheet is printed in. */
export const SHEET_FORMS = ['text', 'html'] as const

export type SheetForm = (typeof SHEET_FORMS)[number]

/** Whether a word names a form of sheet. */
export function isSheetForm(word: unknown): word is SheetForm {
  return SHEET_FORMS.some((form) => form === word)
}

/** Whether a word names a unit of mass that weights can be shown in. */
export function isMassUnit(word: unknown): word is MassUnit {
  return typeof word === 'string' && Object.hasOwn(GRAMS_PER, word)
}

/** `--sheet` alone means `--sheet text`: the flag gets its value, so that a file after it stays a file. */
export function withSheetForm(args: readonly string[]): string[] {
  return args.flatMap((word, index) => {
    if (word !== '--sheet') return [word]
    return isSheetForm(args[index + 1]) ? [word] : ['--sheet', 'text']
  })
}
