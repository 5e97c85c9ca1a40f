import { type CertificateText, readCertificate } from '../data/certificate-text'
import { shipped } from './library'
import type { Blend } from '../domain/blend/blend'
import type { Problem } from '../domain/blend/check-blend'
import type { Oil } from '../domain/blend/oil'
import { libraryWith, ownOilProblems, ownOilsOf } from '../domain/blend/own-library'
import type { OwnFigure } from '../domain/blend/own-acids'
import { alkaliFromAcids, oilOfOwn, type OwnLibrary, type OwnOil } from '../domain/blend/own-oil'
import { effectOfShare, type ShareEffect } from '../domain/blend/share-effect'
import type { WorkHistory } from './history.svelte'
import { freeOwnId, placesOfOil, withoutOwnOil, withOwnOil } from './own-oils'

/** How much of an oil is tried in the bar in hand, percent. */
export const TRIED_PERCENT = 10

/** An acid of the oil, as its row shows it; g per 100 g of acids. */
export interface AcidRow {
  readonly id: string
  readonly name: string
  readonly shorthand: string
  /** In the oil copied from; 0 where it has none. */
  readonly copied: number
  readonly now: number
  /** As the maker stated it; undefined where it is copied, or shared out of the rest. */
  readonly stated: OwnFigure | undefined
}

/**
 * An oil of the maker's own as it is described, or a copy of a library's oil that is not described yet. What is
 * wrong stays on the page and out of the work until it is mended.
 */
export class OwnOilDesk {
  readonly #work: WorkHistory
  readonly #asked: () => string
  /** A description that can't be in force. */
  #held: OwnOil | undefined = $state.raw()

  /** `asked` gives the id of an oil, of the library or of one's own. */
  constructor(work: WorkHistory, asked: () => string) {
    this.#work = work
    this.#asked = asked
  }

  /** As it stands in the work; undefined while nothing of it was changed. */
  readonly kept: OwnOil | undefined = $derived.by(() =>
    this.#work.now.ownOils?.find(({ id }) => id === this.#asked()),
  )
  /** Undefined where there is no such oil. */
  readonly own: OwnOil | undefined = $derived.by(() => this.#held ?? this.kept ?? this.#copy())
  /** The library's oil that it was copied from. */
  readonly base: Oil | undefined = $derived(this.own && shipped.oils.get(this.own.from))
  /** Whether what is shown differs from what is in force. */
  readonly isHeld: boolean = $derived(this.#held !== undefined)
  readonly problems: readonly Problem[] = $derived(
    this.#held ? ownOilProblems(this.#held, this.#others(this.#held), '') : [],
  )
  /** The oil in force, or the plain copy before anything is stated. */
  readonly oil: Oil | undefined = $derived.by(() => {
    const own = this.kept ?? this.own
    return own && this.base && oilOfOwn(own, this.base, this.#others(own))
  })
  /** Saponification value that the acids come to, mg KOH per g. */
  readonly fromAcids: number | undefined = $derived(
    this.oil && alkaliFromAcids(this.oil, shipped.acids),
  )
  /** Why no lye is reckoned with it. */
  readonly noLye: string | undefined = $derived(this.oil?.own?.noLye)
  readonly acids: readonly AcidRow[] = $derived.by(() => this.#acidRows())
  /** What the acids add to, g per 100 g. */
  readonly sum: number = $derived(this.acids.reduce((sum, { now }) => sum + now, 0))
  /** Where it is named, so that it can't go. */
  readonly stands: readonly string[] = $derived.by(() =>
    this.own ? placesOfOil(this.#work.now, this.own.id) : [],
  )

  /** What some of it does to a bar; undefined where nothing can give way. */
  effectOn(bar: Blend): ShareEffect | undefined {
    if (!this.oil) return undefined
    const library = libraryWith(this.#others(this.own), [this.oil])
    return effectOfShare(library, bar, this.oil.id, TRIED_PERCENT)
  }

  /** Changes the description; closely following changes of one `thing` are one step of undo. */
  edit(change: (own: OwnOil) => OwnOil, thing?: string): void {
    if (!this.own) return
    const next = change(this.own)
    const others = this.#others(next)
    if (ownOilProblems(next, others, '').length > 0) {
      this.#held = next
      return
    }
    this.#held = undefined
    const base = shipped.oils.get(next.from)
    const colour = next.colour ?? (base && oilOfOwn(next, base, others).colour)
    this.#work.change((work) => withOwnOil(work, { ...next, colour }), thing)
  }

  /** States an acid, or takes the statement back. */
  setAcid(acid: string, value: number | undefined): void {
    this.edit((own) => {
      const { [acid]: _before, ...rest } = own.acids ?? {}
      const acids = value === undefined ? rest : { ...rest, [acid]: { value } }
      return { ...own, acids: Object.keys(acids).length > 0 ? acids : undefined }
    }, `acid ${acid}`)
  }

  /** Reads a certificate and states what it says; what was not understood is told. */
  takeCertificate(text: string): CertificateText {
    const read = readCertificate(text, shipped.acids)
    const { acids, saponificationValue, iodineValue, lot, certificate } = read
    this.edit((own) => ({
      ...own,
      ...(Object.keys(acids).length > 0 && { acids }),
      ...(saponificationValue && { saponificationValue }),
      ...(iodineValue && { iodineValue }),
      ...(lot !== undefined && { lot }),
      ...(certificate !== undefined && { certificate }),
    }))
    return read
  }

  /** Begins anew as a copy of another oil of the library, under the same name. */
  copyFrom(from: string): void {
    this.edit(({ id, name, lot, certificate, colour }) => ({
      id,
      from,
      name,
      lot,
      certificate,
      colour,
    }))
  }

  /** Lets go of what can't be in force. */
  dropHeld(): void {
    this.#held = undefined
  }

  /** Takes the oil out; only where nothing names it. */
  takeOut(): void {
    const { own } = this
    if (!own || this.stands.length > 0) return
    this.#held = undefined
    this.#work.change((work) => withoutOwnOil(work, own.id))
  }

  #copy(): OwnOil | undefined {
    const from = shipped.oils.get(this.#asked())
    if (!from) return undefined
    const taken = (id: string) => this.#work.now.ownOils?.some((own) => own.id === id) ?? false
    return { id: freeOwnId(from.shortName, taken), from: from.id }
  }

  /** All oils there are but for this one. */
  #others(own: OwnOil | undefined): OwnLibrary & typeof shipped {
    const others = (this.#work.now.ownOils ?? []).filter(({ id }) => id !== own?.id)
    return libraryWith(shipped, ownOilsOf(others, shipped).oils)
  }

  #acidRows(): AcidRow[] {
    const { own, oil, base } = this
    if (!own || !oil || !base) return []
    const known = [base.acids, oil.acids, own.acids ?? {}]
    return [...shipped.acids.values()].flatMap(({ id, name, shorthand }) => {
      if (!known.some((acids) => Object.hasOwn(acids, id))) return []
      const stated = own.acids?.[id]
      const now = this.isHeld && stated ? stated.value : (oil.acids[id]?.typical ?? 0)
      return [{ id, name, shorthand, copied: base.acids[id]?.typical ?? 0, now, stated }]
    })
  }
}
