/**
 * Rules that a statement of xAPI 2.0 must keep, first of all those that a validator for 1.0.3 does not check. Source:
 * IEEE 9274.1.1-2023 by the working group's public change log from 1.0.3 (g4, s1 ... s37 are its entries) and, for
 * what did not change, xAPI 1.0.3 part two; sections 4.2.x are as the conformance tests of 2.0 number them
 * (adlnet/lrs-conformance-test-suite, test/v2_0).
 */

type Group = Readonly<Record<string, unknown>>

const isGroup = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const at = (value: unknown, ...path: readonly string[]): unknown =>
  path.reduce<unknown>((part, name) => (isGroup(part) ? part[name] : undefined), value)

interface Rule {
  readonly rule: string
  readonly holds: (statement: unknown) => boolean
}

const words = (text: string): readonly string[] => text.split(' ')

/** Properties of each object that may stand in our statements: the tables of section 5.2. */
const PROPERTIES: readonly (readonly [path: readonly string[], properties: readonly string[]])[] = [
  [[], words('id actor verb object result context timestamp stored authority version attachments')],
  [['actor'], words('objectType name mbox mbox_sha1sum openid account')],
  [['actor', 'account'], words('homePage name')],
  [['verb'], words('id display')],
  [['object'], words('objectType id definition')],
  [
    ['object', 'definition'],
    words(
      'name description type moreInfo interactionType correctResponsesPattern choices scale source target steps extensions',
    ),
  ],
  [['result'], words('score success completion response duration extensions')],
  [['result', 'score'], words('scaled raw min max')],
  [
    ['context'],
    words(
      'registration instructor team contextActivities contextAgents contextGroups revision platform language statement extensions',
    ),
  ],
  [['context', 'contextActivities'], words('parent grouping category other')],
]

const UTC = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{3,})?Z$/
const IRI = /^[A-Za-z][A-Za-z\d+.-]*:\/\/[^\s<>"{}|\\^`]+$/
const DURATION = /^P(?!$)(\d+Y)?(\d+M)?(\d+D)?(T(?!$)(\d+H)?(\d+M)?(\d+(\.\d{1,2})?S)?)?$/
const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/

const keysOf = (value: unknown): readonly string[] => (isGroup(value) ? Object.keys(value) : [])

/** Null is allowed nowhere but within extensions. */
function hasNull(value: unknown): boolean {
  if (value === null) return true
  if (Array.isArray(value)) return value.some(hasNull)
  return (
    isGroup(value) && Object.entries(value).some(([name, part]) => name !== 'extensions' && hasNull(part))
  )
}

const numberRange = (text: string): boolean => {
  const bounds = text.split('[:]').map(Number)
  return bounds.length === 2 && bounds.every(Number.isFinite) && bounds[0]! <= bounds[1]!
}

/** Whether the pattern is one for the kind of answer: table of interaction types, section 4.2.2.3. */
function patternFits(statement: unknown): boolean {
  const type = at(statement, 'object', 'definition', 'interactionType')
  const pattern = at(statement, 'object', 'definition', 'correctResponsesPattern')
  if (pattern === undefined) return true
  if (!Array.isArray(pattern) || pattern.some((each) => typeof each !== 'string')) return false
  const choices = at(statement, 'object', 'definition', 'choices')
  const ids = Array.isArray(choices) ? choices.map((choice) => at(choice, 'id')) : null
  return pattern.every((each: string) =>
    type === 'numeric'
      ? numberRange(each)
      : each.split('[,]').every((id) => id !== '' && (ids?.includes(id) ?? true)),
  )
}

const RULES: readonly Rule[] = [
  {
    rule: 'version is 2.0.0 (section 4.2.4.3; g4)',
    holds: (statement) => at(statement, 'version') === '2.0.0',
  },
  {
    rule: 'no properties are added to those of the standard (section 5.2.1; s1, s2)',
    holds: (statement) =>
      PROPERTIES.every(([path, properties]) =>
        keysOf(at(statement, ...path)).every((key) => properties.includes(key)),
      ),
  },
  {
    rule: 'the timestamp is one of RFC 3339 in UTC (section 5.2.7; s19, s20)',
    holds: (statement) => UTC.test(String(at(statement, 'timestamp'))),
  },
  {
    rule: 'a duration is one of ISO 8601, to 0.01 s (section 5.2.7; s23 to s25)',
    holds: (statement) => {
      const duration = at(statement, 'result', 'duration')
      return duration === undefined || (typeof duration === 'string' && DURATION.test(duration))
    },
  },
  {
    rule: 'nothing is null outside extensions (section 4.2.4.1)',
    holds: (statement) => !hasNull(statement),
  },
  {
    rule: 'ids of statement and registration are UUIDs (section 5.2.7)',
    holds: (statement) =>
      [at(statement, 'id'), at(statement, 'context', 'registration')].every((id) => UUID.test(String(id))),
  },
  {
    rule: 'keys of extensions and ids of verb and activity are IRIs with a scheme (section 5.2.7)',
    holds: (statement) =>
      [
        ...keysOf(at(statement, 'context', 'extensions')),
        at(statement, 'verb', 'id'),
        at(statement, 'object', 'id'),
        at(statement, 'object', 'definition', 'type'),
        at(statement, 'actor', 'account', 'homePage'),
      ].every((iri) => IRI.test(String(iri))),
  },
  {
    rule: 'the pattern of right answers fits the kind of answer (section 4.2.2.3; 1.0.3 part two, 2.4.4.1)',
    holds: patternFits,
  },
  {
    rule: 'no object is empty (section 5.2.1)',
    holds: (statement) =>
      PROPERTIES.every(([path]) => {
        const object = at(statement, ...path)
        return object === undefined || keysOf(object).length > 0
      }) && keysOf(at(statement, 'context', 'extensions') ?? { none: true }).length > 0,
  },
]

/** Rules that a statement breaks */
export const broken = (statement: unknown): readonly string[] =>
  RULES.filter(({ holds }) => !holds(statement)).map(({ rule }) => rule)
