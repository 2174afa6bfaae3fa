/** Light or dark, as chosen here before or as the device asks. */
import type { Theme } from '../store/view.ts'
import { type Keeper, keep, kept } from './storage.ts'

const THEME_KEY = 'counterturn.theme'

const deviceAsksForDark = (): boolean => window.matchMedia('(prefers-color-scheme: dark)').matches

export function firstTheme(keeper: Keeper | null, dark: boolean = deviceAsksForDark()): Theme {
  const chosen = kept(keeper, THEME_KEY)
  if (chosen === 'light' || chosen === 'dark') return chosen
  return dark ? 'dark' : 'light'
}

export const keepTheme = (keeper: Keeper | null, theme: Theme): void => void keep(keeper, THEME_KEY, theme)
