/**
 * Keeps the screen awake while it is attached, where the browser can: the lock is lost when the page goes
 * out of sight and is asked for again when it comes back. Tells whether it is held.
 */
export const keepAwake = (told: (awake: boolean) => void) => () => {
  let lock: WakeLockSentinel | undefined
  let left = false

  async function ask() {
    if (!('wakeLock' in navigator) || document.visibilityState !== 'visible') return
    try {
      const held = await navigator.wakeLock.request('screen')
      if (left) return await held.release()
      lock = held
      held.addEventListener('release', () => told(false))
      told(true)
    } catch (error) {
      // Refused, as when the battery is low: the screen then sleeps as it always does.
      if (!(error instanceof DOMException)) throw error
      told(false)
    }
  }

  const seen = () => void ask()
  document.addEventListener('visibilitychange', seen)
  void ask()
  return () => {
    left = true
    document.removeEventListener('visibilitychange', seen)
    void lock?.release()
  }
}
