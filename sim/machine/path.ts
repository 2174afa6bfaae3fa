/** Places in a machine by their path, as in 'gearing.wheelTeeth' or 'control.steps[2].voltage'. */
export const pathKeys = (path: string): readonly string[] => path.split(/[.[\]]/).filter((key) => key !== '')

/** An own, plain value; inherited ones and getters are not part of any data. */
export const ownValue = (holder: unknown, key: string): unknown =>
  typeof holder === 'object' && holder !== null
    ? Object.getOwnPropertyDescriptor(holder, key)?.value
    : undefined
