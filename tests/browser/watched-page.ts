import type { Browser, BrowserContext, Page } from 'playwright-core'

export const SIZES = {
  desktop: { width: 1440, height: 900 },
  tablet: { width: 768, height: 1024 },
  phone: { width: 390, height: 844 },
} as const

export type SizeName = keyof typeof SIZES

export interface Look {
  /** Default `desktop`; `tablet` and `phone` have a touch screen too. */
  readonly size?: SizeName
  /** Default `light`. */
  readonly theme?: 'light' | 'dark'
  /** Default false. */
  readonly reducedMotion?: boolean
  /** Device pixels per CSS pixel. Default 1. */
  readonly pixelRatio?: number
  /** A fresh context for this test alone, for what would outlast it in a page used again. */
  readonly own?: boolean
  /** What the page begins with: the example worked through where left out, or nothing, as on a first visit. */
  readonly begin?: 'example' | 'nothing'
}

export interface WatchedPage {
  readonly page: Page
  /** What went wrong up to now: errors, failed answers, requests to the outside. */
  readonly complaints: readonly string[]
  /** Forgets the complaints up to now. */
  readonly forget: () => void
  readonly close: () => Promise<void>
}

/** Only a last stop: a machine may be as slow as it likes. */
const AT_LAST_MS = 120_000

/** Opens an address in a fresh context of the browser and notes all that should never happen. */
export async function openWatched(
  browser: Browser,
  url: string,
  look: Look = {},
): Promise<WatchedPage> {
  const context = await browser.newContext(contextOptions(look))
  context.setDefaultTimeout(AT_LAST_MS)
  const complaints: string[] = []
  await watch(context, complaints)
  const page = await context.newPage()
  await page.goto(url)
  return {
    page,
    complaints,
    forget: () => void complaints.splice(0),
    close: () => context.close(),
  }
}

function contextOptions({ size = 'desktop', theme, reducedMotion, pixelRatio }: Look) {
  return {
    viewport: SIZES[size],
    hasTouch: size !== 'desktop',
    isMobile: size === 'phone',
    colorScheme: theme ?? 'light',
    reducedMotion: reducedMotion ? 'reduce' : 'no-preference',
    deviceScaleFactor: pixelRatio ?? 1,
  } as const
}

async function watch(context: BrowserContext, complaints: string[]): Promise<void> {
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`Console error: ${message.text()}`)
  })
  context.on('weberror', (error) => complaints.push(`Page error: ${error.error().message}`))
  context.on('response', (response) => {
    if (!response.ok() && !isRedirectOrCached(response.status()))
      complaints.push(`Answer ${response.status()} for ${response.url()}`)
  })
  // Told and not intercepted, which would cost every request a detour and the page its cache; the
  // browser itself refuses what goes outside.
  context.on('request', (request) => {
    if (isOutside(new URL(request.url())))
      complaints.push(`Request outside this machine: ${request.url()}`)
  })
  await context.routeWebSocket(isOutside, (socket) => {
    complaints.push(`Socket outside this machine: ${socket.url()}`)
    return socket.close()
  })
}

function isRedirectOrCached(status: number): boolean {
  return status >= 300 && status < 400
}

const LOCAL_HOSTS: readonly string[] = ['localhost', '127.0.0.1', '[::1]']

/** `data:` and `blob:` addresses have no host. */
function isOutside(url: URL): boolean {
  return url.host !== '' && !LOCAL_HOSTS.includes(url.hostname)
}
