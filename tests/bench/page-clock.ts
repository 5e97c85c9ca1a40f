import type { Page } from 'playwright-core'

/** How long the page took from an event to what it changed, ms. */
export interface Reaction {
  /** Until the blend at the top is another one. */
  readonly blend: number
  /** Until the map's region is another one. */
  readonly region: number
  /** Until the first frame that shows both. */
  readonly drawn: number
}

/** What the page's side of the clock offers. */
interface Clock {
  /** Waits from the next input on, until blend and region have changed and nothing more does. */
  arm(): void
  reaction(): Promise<Reaction>
  /** Notes the time of every frame until `frames` is asked. */
  startFrames(): void
  /** Milliseconds between frames. */
  frames(): number[]
}

declare global {
  interface Window {
    benchClock: Clock
  }
}

/** Puts a clock into a page: it takes the time of events and of what follows inside the page itself. */
export async function withClock(page: Page): Promise<void> {
  await page.evaluate(() => {
    /** Blend and region count as settled when they have not changed for so long. */
    const QUIET_MS = 150
    const region = () => document.querySelector('.map path.edge')?.getAttribute('d') ?? ''
    const blend = () =>
      [...document.querySelectorAll('.hand [data-oil]')]
        .map((one) => `${one.getAttribute('data-oil')} ${one.getAttribute('data-share')}`)
        .join()

    let from = NaN
    let result = Promise.resolve({ blend: NaN, region: NaN, drawn: NaN })
    for (const kind of ['pointermove', 'input'])
      document.addEventListener(kind, (event) => (from = event.timeStamp), { capture: true })

    function arm() {
      from = NaN
      const seen = { region: region(), blend: blend() }
      const at = { region: NaN, blend: NaN, drawn: NaN }
      let quiet: ReturnType<typeof setTimeout> | undefined
      result = new Promise((resolve) => {
        const observer = new MutationObserver(() => {
          const now = performance.now()
          const next = { region: region(), blend: blend() }
          if (next.region !== seen.region) at.region = now
          if (next.blend !== seen.blend) at.blend = now
          if (next.region === seen.region && next.blend === seen.blend) return
          Object.assign(seen, next)
          requestAnimationFrame(() => (at.drawn = performance.now()))
          clearTimeout(quiet)
          quiet = setTimeout(settle, QUIET_MS)
        })
        function settle() {
          if (Number.isNaN(at.region) || Number.isNaN(at.blend)) return
          observer.disconnect()
          resolve({ blend: at.blend - from, region: at.region - from, drawn: at.drawn - from })
        }
        observer.observe(document.body, { subtree: true, childList: true, attributes: true })
      })
    }

    let times: number[] = []
    let frame = 0
    function note(now: number) {
      times.push(now)
      frame = requestAnimationFrame(note)
    }
    window.benchClock = {
      arm,
      reaction: () => result,
      startFrames() {
        times = []
        frame = requestAnimationFrame(note)
      },
      frames() {
        cancelAnimationFrame(frame)
        return times.slice(1).map((time, k) => time - (times[k] ?? NaN))
      },
    }
  })
}

/** Waits until nothing of the page has changed for a second, so that what is timed next begins at rest. */
export function untilQuiet(page: Page): Promise<void> {
  return page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const REST_MS = 1000
        const rested = () => {
          observer.disconnect()
          resolve()
        }
        let rest = setTimeout(rested, REST_MS)
        const observer = new MutationObserver(() => {
          clearTimeout(rest)
          rest = setTimeout(rested, REST_MS)
        })
        observer.observe(document.body, { subtree: true, childList: true, attributes: true })
      }),
  )
}

export const arm = (page: Page): Promise<void> => page.evaluate(() => window.benchClock.arm())

export const reaction = (page: Page): Promise<Reaction> =>
  page.evaluate(() => window.benchClock.reaction())

/** Times between the frames of the page while something is done, ms. */
export async function framesDuring(page: Page, act: () => Promise<void>): Promise<number[]> {
  await page.evaluate(() => window.benchClock.startFrames())
  await act()
  return page.evaluate(() => window.benchClock.frames())
}
