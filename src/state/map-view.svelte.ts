import type { MapPoint } from '../charts/map'
import { library } from './library'
import type { Brief } from '../domain/optimise/brief/brief'
import { COST } from '../domain/blend/measure'
import {
  type Land,
  type LandQuestion,
  type Lens,
  withLens,
} from '../domain/optimise/map/land-question'
import type { Point } from '../domain/optimise/solve/point'
import type { Interval } from '../domain/interval'
import { mayTakeLong } from '../domain/optimise/brief/brief-rules'
import type { Sample } from '../domain/optimise/map/sample-linear'
import type { Answer } from '../domain/optimise/brief/answer'
import { proxy, type SolverClient } from '../worker/client'
import type { Explorer } from './explorer.svelte'
import { Latest } from './latest'

/** The blend under the cross of the map, or why there is none. */
export interface Probe {
  readonly place: MapPoint
  readonly answer: Answer
}

/** A place of the map and the brief to solve there. */
interface PlaceQuestion {
  readonly brief: Brief
  readonly point: Point
  /** How near it is to be hit where shares go in steps; exactly if left out. */
  readonly within: Point | undefined
  readonly place: MapPoint
}

/** The part of a map on screen, in the axes' units. */
export interface MapWindow {
  readonly x: Interval
  readonly y: Interval
}

/** Heights are exact on a grid of so many columns and rows; lines run straight between them. */
const GRID = 60

/** Lines drawn at once. */
const SAMPLE_COUNT = 20_000

/** How long a look at a place may take under rules: longer, and the best found so far will do. */
const LOOK_MS = 1000

/** What is found from coarse to fine may take minutes: whoever looks at it sees how far it is. */
const PATIENT_MS = 600_000

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
  /** Whether the land is still being found, long enough to say so. */
  busy = $state(false)
  /** How much of a sample is found, 0 to 1, while it takes its time. */
  sampled: number | undefined = $state()
  /** What went wrong with the program itself. */
  failure: string | undefined = $state()

  readonly #explorer: Explorer
  readonly #lands: Latest<LandQuestion, Land | undefined>
  readonly #samples: Latest<Brief, Sample | undefined>
  readonly #probes: Latest<PlaceQuestion, Answer>
  readonly #takes: Latest<PlaceQuestion, Answer>

  /** What takes long goes to `patient`, so that `client` goes on answering meanwhile. */
  constructor(explorer: Explorer, client: SolverClient, patient = client) {
    this.#explorer = explorer
    this.#lands = new Latest(
      (question, signal) =>
        mayTakeLong(question.brief)
          ? this.#landUnderRules(patient, question, signal)
          : client.ask((service) => service.land(question)),
      ({ brief }, land) => {
        this.busy = false
        this.land = land ?? (hasOils(brief) ? this.land : undefined)
      },
      (_, error) => this.#fail(error),
    )
    this.#samples = new Latest(
      (brief, signal) => this.#sampleOf(patient, brief, signal),
      (_, sample) => {
        this.sampled = undefined
        this.sample = sample ?? this.sample
      },
      (_, error) => this.#fail(error),
    )
    const solveAt = ({ brief, point, within }: PlaceQuestion) =>
      client.ask((service, solver) =>
        service.solveAt(solver, brief, point, { timeMs: LOOK_MS, within }),
      )
    const fail = (_: PlaceQuestion, error: unknown) => this.#fail(error)
    this.#probes = new Latest(
      solveAt,
      ({ brief, place }, answer) => (this.#probe = { brief, place, answer }),
      fail,
    )
    this.#takes = new Latest(
      solveAt,
      ({ brief }, answer) => {
        if (brief === this.brief && 'blend' in answer) explorer.pick(answer)
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

  /** Calls off what is still being found; what is known by now stays. */
  stop(): void {
    this.#lands.stop()
    this.#samples.stop()
    this.busy = false
    this.sampled = undefined
  }

  /** Sends for a sample of what the brief allows, while lines are looked at. */
  askSample(): void {
    if (this.wantsSample) this.#samples.put(this.brief)
  }

  /** Asks for the best blend at a place of the map. */
  look(place: MapPoint): void {
    this.#probes.put(this.#questionAt(place))
  }

  /** Takes the best blend at a place of the map in hand, as soon as it is known. */
  take(place: MapPoint): void {
    this.#takes.put(this.#questionAt(place))
  }

  /** Lets go of what was under the cross. */
  lookAway(): void {
    this.#probe = undefined
  }

  /** Found from coarse to fine and shown on the way; a newer question ends it. */
  #landUnderRules(client: SolverClient, question: LandQuestion, signal: AbortSignal) {
    const goesOn = (land: Land) => {
      if (signal.aborted) return false
      this.busy = true
      this.land = land
      return true
    }
    return client.ask((service) => service.land(question, proxy(goesOn)), {
      signal,
      limitMs: PATIENT_MS,
    })
  }

  #sampleOf(client: SolverClient, brief: Brief, signal: AbortSignal) {
    const goesOn = (part: number) => {
      if (!signal.aborted) this.sampled = part
      return !signal.aborted
    }
    return client.ask((service) => service.sample(brief, SAMPLE_COUNT, proxy(goesOn)), {
      signal,
      limitMs: PATIENT_MS,
    })
  }

  /** In the axes of what is drawn, which follows a change of axes a moment later. */
  #questionAt(place: MapPoint): PlaceQuestion {
    const [across, up] = this.land?.axes ?? this.axes
    const terrain = this.land?.ruled?.terrain
    const within = terrain?.inCells
      ? { [across]: halfStep(terrain.x), [up]: halfStep(terrain.y) }
      : undefined
    return { brief: this.brief, point: { [across]: place.x, [up]: place.y }, place, within }
  }

  #priced(): boolean {
    return Object.values(this.#explorer.brief.oils).every(
      ({ pricePerKg }) => pricePerKg !== undefined,
    )
  }

  #fail(error: unknown): void {
    this.busy = false
    this.sampled = undefined
    this.failure = error instanceof Error ? error.message : String(error)
  }
}

/** Half of what lies between two marks of a grid. */
function halfStep([first = 0, second = first]: readonly number[]): number {
  return (second - first) / 2
}

function hasOils({ oils }: Brief): boolean {
  return Object.keys(oils).length > 0
}

/** The ends that a lens can set on a measure: a floor where more is wanted, else a ceiling. */
export function lensSide(measure: string): 'min' | 'max' {
  return library.measures.find(({ id }) => id === measure)?.better === 'less' ? 'max' : 'min'
}
