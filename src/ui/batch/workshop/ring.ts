/** Hz and seconds of the one sound that a clock makes. */
const PITCH_HZ = 880
const LASTS_S = 0.8
const LOUD = 0.4

/** Rings once, where the browser lets a page sound; it may not before anything on it was touched. */
export function ring(): void {
  const audio = new AudioContext()
  const [tone, volume] = [audio.createOscillator(), audio.createGain()]
  tone.frequency.value = PITCH_HZ
  volume.gain.setValueAtTime(LOUD, audio.currentTime)
  volume.gain.exponentialRampToValueAtTime(0.001, audio.currentTime + LASTS_S)
  tone.connect(volume).connect(audio.destination)
  tone.addEventListener('ended', () => void audio.close())
  tone.start()
  tone.stop(audio.currentTime + LASTS_S)
}
