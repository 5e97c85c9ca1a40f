import type { Place } from '../charts/map'
import { library } from '../data/library'
import type { Brief } from '../domain/optimise/brief'
import { COST } from '../domain/blend/measure'
import { type Land, type LandQuestion, type Lens, withLens } from '../domain/optimise/land'
import type { Point } from '../domain/optimise/point'
import type { Range } from '../domain/optimise/ranges'
import type { Sample } from '../domain/optimise/sample'
import type { Answer } from '../domain/optimise/solve'
import type { SolverClient } from '../worker/client'
import type { Explorer } from './explorer.svelte'
import { Latest } from './latest'

/** The blend under the cross of the map, or why there is none. */
export interface Probe {
  readonly place: Place
  readonly answer: Answer
}

/** A place of the map and the brief to solve there. */
interface PlaceQuestion {
  readonly brief: Brief
  readonly point: Point
  readonly place: Place
}

/** The part of a map on screen, in the axes' units. */
export interface MapWindow {
  readonly x: Range
  readonly y: Range
}

/** Heights are exact on a grid of so many columns and rows; lines run straight between them. */
const GRID = 60

/** Lines drawn at once. */
const SAMPLE_COUNT = 20_000

/** How the map is looked at, and what lies there. */
export class MapView {
  /** The measure drawn as height. */
  height: string = $state(COST)
  /** A measure whose limit is tried out on the map alone; its first value is the one in force. */
  lens: Lens | undefined = $state.raw()
  /** The part zoomed in on; undefined shows the whole region. */
  window: MapWindow | undefined = $state.raw()
  /** What lies on the map; it stays while the next one is reckoned. */
  land: Land | undefined = $state.raw()
  #probe: (Probe & { readonly brief: Brief }) | undefined = $state.raw()
  /** Blends to draw as lines; only sent for while wanted. */
  sample: Sample | undefined = $state.raw()
  wantsSample = $state(false)
  /** What went wrong with the program itself. */
  failure: string | undefined = $state()

  readonly #explorer: Explorer
  readonly #lands: Latest<LandQuestion, Land | undefined>
  readonly #samples: Latest<Brief, Sample | undefined>
  readonly #probes: Latest<PlaceQuestion, Answer>
  readonly #takes: Latest<PlaceQuestion, Answer>

  constructor(explorer: Explorer, client: SolverClient) {
    this.#explorer = explorer
    this.#lands = new Latest(
      (question) => client.ask((service) => service.land(question)),
      ({ brief }, land) => (this.land = land ?? (hasOils(brief) ? this.land : undefined)),
      (_, error) => this.#fail(error),
    )
    this.#samples = new Latest(
      (brief) => client.ask((service) => service.sample(brief, SAMPLE_COUNT)),
      (_, sample) => (this.sample = sample ?? this.sample),
      (_, error) => this.#fail(error),
    )
    const solveAt = ({ brief, point }: PlaceQuestion) =>
      client.ask((service, solver) => service.solveAt(solver, brief, point))
    const fail = (_: PlaceQuestion, error: unknown) => this.#fail(error)
    this.#probes = new Latest(
      solveAt,
      ({ brief, place }, answer) => (this.#probe = { brief, place, answer }),
      fail,
    )
    this.#takes = new Latest(
      solveAt,
      ({ brief }, answer) => {
        if (brief === this.brief && answer.status === 'optimal') explorer.pick(answer)
      },
      fail,
    )
  }

  /** The brief with the lens in force: what the map is drawn for. */
  readonly brief: Brief = $derived.by(() =>
    withLens(this.#explorer.brief, this.lens, this.lens?.values[0] ?? 0),
  )
  readonly axes = $derived.by(() => this.#explorer.draft.axes)
  /** What is under the cross; any change of the brief lets it go. */
  readonly probe: Probe | undefined = $derived.by(() =>
    this.#probe?.brief === this.brief ? this.#probe : undefined,
  )

  /** Height that can be drawn: cost only where every oil has a price. */
  readonly drawnHeight = $derived.by(() =>
    this.height === COST && !this.#priced() ? undefined : this.height,
  )

  /** Sends for what lies on the map as it is now looked at. */
  ask(): void {
    this.#lands.put({
      brief: this.brief,
      axes: this.axes,
      height: this.drawnHeight,
      window: this.window,
      lens: this.lens && { ...this.lens, values: this.lens.values.slice(1) },
      grid: GRID,
    })
  }

  /** Sends for a sample of what the brief allows, while lines are looked at. */
  askSample(): void {
    if (this.wantsSample) this.#samples.put(this.brief)
  }

  /** Asks for the best blend at a place of the map. */
  look(place: Place): void {
    this.#probes.put(this.#questionAt(place))
  }

  /** Takes the best blend at a place of the map in hand, as soon as it is known. */
  take(place: Place): void {
    this.#takes.put(this.#questionAt(place))
  }

  /** Lets go of what was under the cross. */
  lookAway(): void {
    this.#probe = undefined
  }

  /** In the axes of what is drawn, which follows a change of axes a moment later. */
  #questionAt(place: Place): PlaceQuestion {
    const [across, up] = this.land?.axes ?? this.axes
    return { brief: this.brief, point: { [across]: place.x, [up]: place.y }, place }
  }

  #priced(): boolean {
    return Object.values(this.#explorer.brief.oils).every(
      ({ pricePerKg }) => pricePerKg !== undefined,
    )
  }

  #fail(error: unknown): void {
    this.failure = error instanceof Error ? error.message : String(error)
  }
}

function hasOils({ oils }: Brief): boolean {
  return Object.keys(oils).length > 0
}

/** The ends that a lens can set on a measure: a floor where more is wanted, else a ceiling. */
export function lensSide(measure: string): 'min' | 'max' {
  return library.measures.find(({ id }) => id === measure)?.better === 'less' ? 'max' : 'min'
}
