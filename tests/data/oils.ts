import { library } from '../../src/data/library'
import type { Oil } from '../../src/domain/blend/oil'
import { calculatedIodineValue } from '../../src/domain/chemistry/iodine'
import { typicalProfile } from '../../src/domain/chemistry/profile'
import { calculatedSaponificationValue } from '../../src/domain/chemistry/saponification'
import { fractionFromPerMille } from '../../src/domain/units'

/** The library's oils in file order. */
export const allOils: readonly Oil[] = [...library.oils.values()]

/** The oil of that id; throws when the library has none. */
export function oilOf(id: string): Oil {
  const oil = library.oils.get(id)
  if (!oil) throw new Error(`The library has no oil ${id}`)
  return oil
}

/** mg KOH per g from the typical profile less the typical unsaponifiables. */
export function saponificationFromProfile({
  acids,
  unsaponifiableGPerKg,
  kind,
  waxRest,
}: Oil): number {
  return calculatedSaponificationValue(
    typicalProfile(acids),
    library.acids,
    fractionFromPerMille(unsaponifiableGPerKg.typical),
    kind,
    waxRest,
  )
}

/** g iodine per 100 g from the typical profile less the typical unsaponifiables. */
export function iodineFromProfile({ acids, unsaponifiableGPerKg, kind, waxRest }: Oil): number {
  return calculatedIodineValue(
    typicalProfile(acids),
    library.acids,
    fractionFromPerMille(unsaponifiableGPerKg.typical),
    kind,
    waxRest,
  )
}
