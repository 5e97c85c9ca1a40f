import type { Library } from '../../blend/library'
import type { Infeasible } from '../../lp/simplex/answer'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import type { Limit } from '../brief/limits'
import { type LimitPlace, placesOf, setBounds } from '../space/limit-place'

/** Kinds of limits in the order in which they are given up where any of them would do. */
const GIVEN_UP_FIRST: readonly Limit['kind'][] = ['oil', 'group']

/**
 * Paths of limits that cannot hold together, for a sound brief that has no blend; empty where it has one.
 * The set is irreducible: dropping any one of them lets the rest hold. Wishes on measures stay in it
 * where either they or limits of oils or groups would do.
 *
 * Farkas's weights of an infeasible answer already name a set that clashes (J. Gleeson, J. Ryan, ORSA J.
 * Computing 2 (1990) 61-63); the deletion filter then drops each of its limits in turn, and leaves it
 * dropped if the rest still clash (J.W. Chinneck, E.W. Dravnieks, ORSA J. Computing 3 (1991) 157-168),
 * each time shrinking to what the new proof leans on. Also for limits whose own ends cross. Rules on which
 * oils are used are not looked at.
 *
 * Strictly: limits clash here as soon as that can be proved, and a brief has no blend only where its limits
 * miss one another by more than what touches. So whatever has none has a clash.
 */
export function conflictOf(brief: Brief, library: Library): string[] {
  const limits = new LimitSwitches(new BlendSpace(brief, library))
  let clash = limits.clash()
  if (!clash) return []
  for (const kind of GIVEN_UP_FIRST)
    clash = limits.dropIfStillClashing((place) => place.limit.kind === kind) ?? clash
  limits.keepOnly(clash)
  for (const place of limits.kept()) {
    const smaller = limits.dropIfStillClashing((other) => other === place)
    if (smaller) limits.keepOnly(smaller)
  }
  return limits.kept().map(({ limit }) => limit.path)
}

/** The limits of a brief, each of which can be dropped and taken up again. */
class LimitSwitches {
  readonly #places: readonly LimitPlace[]
  #dropped = new Set<LimitPlace>()

  constructor(private readonly space: BlendSpace) {
    this.#places = placesOf(space)
    space.simplex.setCost(new Float64Array(space.oils.length))
  }

  /** Limits not dropped: oils first, then groups, then measures. */
  kept(): LimitPlace[] {
    return this.#places.filter((place) => !this.#dropped.has(place))
  }

  /** Drops all but these. */
  keepOnly(places: ReadonlySet<LimitPlace>): void {
    this.#dropOnly(this.#places.filter((place) => !places.has(place)))
  }

  /** Drops those of a kind and says which limits clash still; takes them up again where none do. */
  dropIfStillClashing(chosen: (place: LimitPlace) => boolean): ReadonlySet<LimitPlace> | undefined {
    const before = [...this.#dropped]
    this.#dropOnly([...before, ...this.kept().filter(chosen)])
    const clash = this.clash()
    if (!clash) this.#dropOnly(before)
    return clash
  }

  /** Limits that a proof of their clash leans on; undefined where a blend keeps all that are not dropped. */
  clash(): ReadonlySet<LimitPlace> | undefined {
    const outcome = this.space.simplex.solveStrictly()
    if (outcome.status !== 'infeasible') return undefined
    return new Set(this.kept().filter((place) => this.#leansOn(outcome, place)))
  }

  #leansOn(
    { crossed, rowWeights, columnWeights }: Infeasible,
    { owner, limit }: LimitPlace,
  ): boolean {
    if (crossed >= 0) return crossed === this.space.simplex.variableOf(owner)
    // The weighted rows add up to one whose least value, at these ends of the bounds, is still too much.
    const weight =
      owner.kind === 'row' ? -(rowWeights[owner.index] ?? NaN) : (columnWeights[owner.index] ?? NaN)
    return limit.side === 'min' ? weight > 0 : weight < 0
  }

  #dropOnly(dropped: readonly LimitPlace[]): void {
    this.#dropped = new Set(dropped)
    for (const place of this.#places) {
      const sides = this.kept().filter(
        ({ owner }) => owner.kind === place.owner.kind && owner.index === place.owner.index,
      )
      const has = (side: Limit['side']) => sides.some(({ limit }) => limit.side === side)
      setBounds(this.space, place.owner, {
        lower: has('min') ? place.stated.lower : place.open.lower,
        upper: has('max') ? place.stated.upper : place.open.upper,
      })
    }
  }
}
