import type { ReadyPlan } from '../result/plan'
import type { StepText } from './steps'

/*
 * The last steps of a paste, in the place of mould, cut and cure. Times and the water to dilute with are common
 * practice: one part of paste in one to two parts of water by weight.
 */

/** From the pot into a jar, and from the jar into water. */
export function pasteSteps({ process, fresh, order }: ReadyPlan): StepText[] {
  const paste = `${fresh.freshG.toFixed(0)} g of paste`
  return [
    ...(process === 'cold' ? [restStep()] : []),
    {
      id: 'jar',
      title: 'Into the jar',
      say: `Fill ${paste} into clean jars with lids${order.mould ? ', the vessels planned' : ''}. It is not cut and does not dry: write the batch and the day on each.`,
      cautions: process === 'hot' ? ['It is hot.'] : ['Gloves on: young soap still bites.'],
      checks: ['Test for free alkali before any is used, sold or diluted.'],
    },
    {
      id: 'dilute',
      title: 'Dilute for use',
      say: 'Stir one part of paste by weight into one to two parts of hot water, cover, and leave it overnight; stir until no lump is left.',
      cautions: ['Diluted soap can spoil: make what is used within weeks, or have it preserved.'],
      checks: ['Clear or even; a layer of oil on top means that it is not all soap.'],
    },
  ]
}

/** Raw paste becomes soap in the covered pot. */
function restStep(): StepText {
  return {
    id: 'rest',
    title: 'Let it turn to paste',
    say: 'Cover the pot and keep it warm. Stir now and then until it is one translucent mass: a day or more.',
    cautions: ['It is still lye for a day or two: gloves on.'],
    checks: ['Translucent right through, no white and no liquid.'],
  }
}
