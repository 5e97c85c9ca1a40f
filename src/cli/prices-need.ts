import { mass } from '../data/mass-text'
import { parseValue } from '../data/problems'
import { landedCost } from '../domain/cost/landed'
import type { Pricing } from '../domain/cost/run-cost'
import { suppliesOf } from '../domain/cost/supply'
import { GRAMS_PER_KG } from '../domain/units'
import { boughtPack } from './buy'
import { allInvalid, invalid, type Result, solved } from './command'

/** What needed quantities cost, typed as "olive=12 kg,carton=300": parted packs against whole ones. */
export function neededResult(typed: string, waste: number, pricing: Pricing): Result {
  const needs: { readonly material: string; readonly amount: number }[] = []
  for (const part of typed.split(',')) {
    const [material = '', text = '', ...more] = part.split('=').map((word) => word.trim())
    if (more.length > 0 || text === '' || !pricing.materialOf(material))
      return invalid(
        '--need',
        `"${part}" is no need. Write it as olive=12kg, by the material’s id.`,
      )
    const read = parseValue(mass, Number.isFinite(Number(text)) ? Number(text) : text)
    if (read.status === 'invalid') return allInvalid(read.problems)
    if (!(read.value > 0)) return invalid('--need', `"${part}" needs nothing. Give more than 0.`)
    needs.push({ material, amount: read.value })
  }
  return solved({
    status: 'ready',
    currency: pricing.book.currency,
    on: pricing.on,
    needs: needs.map(({ material, amount }) => told(material, amount, waste, pricing)),
  })
}

function told(material: string, amount: number, wastePercent: number, pricing: Pricing) {
  const { book, materialOf, on } = pricing
  const { supplies, missing } = suppliesOf(material, book, materialOf, on)
  const landed = landedCost(supplies, amount, { wastePercent, leftovers: 'lost' })
  if (!landed) return { material, need: amount, missing: missing.map(({ message }) => message) }
  const { need, gross, marginalPerUnit, proRataMinor, cover, leftover, leftoverMinor } = landed
  const per = (minor: number) => (minor / need) * GRAMS_PER_KG
  const byPiece = supplies.some(({ offer }) => offer.unit === 'piece')
  return {
    material,
    need,
    withWaste: gross,
    bought: cover.bought.map(boughtPack),
    boughtMinor: cover.minor,
    leftover,
    leftoverMinor,
    proRataMinor,
    ...(byPiece
      ? { marginalMinorPerPiece: marginalPerUnit, allBoughtMinorPerPiece: cover.minor / need }
      : {
          marginalMinorPerKg: marginalPerUnit * GRAMS_PER_KG,
          lessLeftoversMinorPerKg: per(cover.minor - leftoverMinor),
          allBoughtMinorPerKg: per(cover.minor),
        }),
  }
}
