import { readFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { describe, expect, test } from 'vitest'
import { FOLDER_RULES } from './folder-rules.js'
import { arrowsBetween, cycleIn, importsBelow, picture, roomOf, ROOMS } from './rooms.js'

const domain = importsBelow('domain')
const arrows = arrowsBetween(domain, roomOf)
const developers = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8')

describe('the rooms of the domain', () => {
  test('hold every file of it', () => {
    expect([...domain.keys()].filter((file) => roomOf(file) === undefined)).toEqual([])
  })

  test.each(Object.entries(ROOMS))('%s imports just what it may', (room, allowed) => {
    const used = [...(arrows.get(room) ?? [])].filter((other) => other !== 'ground')
    expect(used.toSorted()).toEqual([...allowed].sort())
  })

  test('name only rooms that stand above them in the table, so no arrow leads back', () => {
    const names = Object.keys(ROOMS)
    for (const [room, allowed] of Object.entries(ROOMS))
      for (const other of allowed)
        expect(names.indexOf(other), `${other} of ${room}`).toBeLessThan(names.indexOf(room))
  })

  test('know no oil where they are about linear programs', () => {
    const linear = Object.keys(ROOMS).filter((room) => room.startsWith('lp'))
    const others = linear.flatMap((room) => [...(arrows.get(room) ?? [])])
    expect(others.filter((other) => !other.startsWith('lp'))).toEqual([])
  })
})

describe('import cycles between folders', () => {
  test('there are none in the domain, folder by folder', () => {
    expect(cycleIn(arrowsBetween(domain, dirname))).toBeUndefined()
  })

  test('there are none in src, each file that lies in ui and in no folder of it being its own', () => {
    const folderOf = (file: string) => (dirname(file) === 'ui' ? file : dirname(file))
    expect(cycleIn(arrowsBetween(importsBelow(), folderOf))).toBeUndefined()
  })

  test('one would be found', () => {
    const planted = new Map([
      ['a/one.ts', ['b/two.ts']],
      ['b/two.ts', ['b/three.ts', 'c/four.ts']],
      ['c/four.ts', ['a/five.ts']],
    ])
    expect(cycleIn(arrowsBetween(planted, dirname))).toEqual(['a', 'b', 'c', 'a'])
    planted.set('c/four.ts', [])
    expect(cycleIn(arrowsBetween(planted, dirname))).toBeUndefined()
  })
})

describe('DEVELOPERS.md', () => {
  test('shows the floors of the rooms as they are', () => {
    expect(developers).toContain(`\`\`\`text\n${picture()}\n\`\`\``)
  })

  test.each(Object.entries(ROOMS))('says of %s what it may import', (room, allowed) => {
    expect(mayImport(`src/domain/${room}`)).toBe(
      allowed.length > 0 ? allowed.join(', ') : 'nothing',
    )
  })

  test.each(Object.entries(FOLDER_RULES))(
    'says of %s what it may import',
    (folder, { folders, packages }) => {
      const names = packages.map((name) => (name === 'node:' ? 'Node' : name))
      expect(mayImport(`src/${folder}`)).toBe([...folders, ...names].join(', '))
    },
  )
})

/** The last column of the row of a folder. */
function mayImport(folder: string): string | undefined {
  const row = developers.split('\n').find((line) => line.startsWith(`| \`${folder}\` `))
  return row?.split('|')[3]?.trim()
}
