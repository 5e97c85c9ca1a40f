import type { openBatch as OpenBatchFile } from '../../data/open-batch'
import type { openBrief as OpenBriefFile } from '../../data/open-brief'
import { briefAsFile } from '../../data/brief-file'
import { library } from '../../state/library'
import type { Problem } from '../../domain/blend/check-blend'
import { blendOfParts } from '../../domain/blend/giving-way'
import { withBatch } from '../../state/opened-batch'
import { wholeBriefOf } from '../../state/draft'
import { startedAfresh, withExample } from '../../state/first-work'
import { draftOfBrief } from '../../state/draft-of-brief'
import { besideOwnOils, carriedWith } from '../../state/own-oils'
import type { WorkHistory } from '../../state/history.svelte'
import { downloadText, fileStem } from '../download'
import { LATE_READERS } from '../late-readers'

type OpenBatch = typeof OpenBatchFile
type OpenBrief = typeof OpenBriefFile

/** A file that could not be opened, and why. */
export interface RefusedFile {
  readonly name: string
  readonly problems: readonly Problem[]
}

/** Takes briefs to files and back, and begins new ones. Each is one step of undo. */
export class BriefDesk {
  refused: RefusedFile | undefined = $state.raw()
  readonly #work: WorkHistory

  constructor(work: WorkHistory) {
    this.#work = work
  }

  /** Hands the brief as it is asked now to the downloads: without banned oils, locks as limits. */
  download(): void {
    const { brief, batch, bar, ownOils } = this.#work.now
    const blend = bar && blendOfParts(bar.parts)
    const whole = wholeBriefOf(brief, batch.oilGrams, blend)
    const { goal } = whole
    const named = [
      ...Object.keys(whole.oils),
      ...('closestTo' in goal ? Object.keys(goal.closestTo) : []),
    ]
    const file = briefAsFile(whole, carriedWith(ownOils, named))
    const text = `${JSON.stringify(file, undefined, 2)}\n`
    downloadText(`${fileStem(brief.name)}.brief.json`, text, 'application/json')
  }

  /** Opens a brief, or a batch, in place of the present one; a file that can't be one changes nothing. */
  async open(file: File): Promise<void> {
    const text = await file.text()
    if (/"barwright-batch\//u.test(text)) {
      const reader = await this.#reader(file.name, LATE_READERS.batch)
      if (reader) this.#openBatch(reader.openBatch, file.name, text)
    } else {
      const reader = await this.#reader(file.name, LATE_READERS.brief)
      if (reader) this.#openBrief(reader.openBrief, file.name, text)
    }
  }

  /** What reads a kind of file; undefined, and said, where it does not come. */
  async #reader<T>(fileName: string, load: () => Promise<T>): Promise<T | undefined> {
    try {
      return await load()
    } catch {
      const message =
        'What reads files did not come from the server. Nothing was changed; open it again.'
      this.refused = { name: fileName, problems: [{ path: '', message }] }
      return undefined
    }
  }

  #openBatch(openBatch: OpenBatch, fileName: string, text: string): void {
    const parsed = openBatch(text, library)
    this.refused =
      parsed.status === 'invalid' ? { name: fileName, problems: parsed.problems } : undefined
    if (parsed.status === 'invalid') return
    const name = parsed.value.order.papers?.product ?? fileName.replace(/(\.batch)?\.json$/iu, '')
    this.#work.change((work) => {
      const { ownOils, ...batch } = parsed.value
      const beside = besideOwnOils(work.ownOils, ownOils)
      const opened = withBatch(
        { ...work, ...(beside.ownOils.length > 0 && { ownOils: beside.ownOils }) },
        beside.rename(batch),
      )
      return { ...opened, brief: { ...opened.brief, name } }
    })
  }

  #openBrief(openBrief: OpenBrief, fileName: string, text: string): void {
    const parsed = openBrief(text, library)
    this.refused =
      parsed.status === 'invalid' ? { name: fileName, problems: parsed.problems } : undefined
    if (parsed.status === 'invalid') return
    const name = fileName.replace(/(\.brief)?\.json$/iu, '')
    this.#work.change((work) => {
      const { brief, ownOils } = parsed.value
      const beside = besideOwnOils(work.ownOils, ownOils)
      return {
        ...work,
        ...(beside.ownOils.length > 0 && { ownOils: beside.ownOils }),
        brief: draftOfBrief(work.brief, beside.rename(brief), name),
      }
    })
  }

  /** Gives the brief another name. */
  rename(name: string): void {
    this.#work.change((work) => ({ ...work, brief: { ...work.brief, name } }), 'brief name')
  }

  /** Begins with an empty shelf. */
  startAfresh(): void {
    this.#work.change(startedAfresh)
  }

  /** Puts the example in place of the brief. */
  openExample(): void {
    this.#work.change(withExample)
  }

  /** Puts the message about a file away. */
  dismiss(): void {
    this.refused = undefined
  }
}
