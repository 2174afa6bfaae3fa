/** leva in our tokens. They are variables of the page, so light and dark need no second theme. */
import type { LevaPanel } from 'leva'
import type { ComponentProps } from 'react'

type LevaTheme = NonNullable<ComponentProps<typeof LevaPanel>['theme']>

export const levaTheme: LevaTheme = {
  colors: {
    elevation1: 'var(--panel)',
    elevation2: 'var(--panel)',
    elevation3: 'var(--panel-2)',
    accent1: 'var(--control)',
    accent2: 'var(--ink)',
    accent3: 'var(--ink)',
    highlight1: 'var(--hairline)',
    highlight2: 'var(--ink-2)',
    highlight3: 'var(--ink)',
    vivid1: 'var(--look)',
    folderTextColor: 'var(--ink)',
    toolTipBackground: 'var(--ink)',
    toolTipText: 'var(--panel)',
  },
  radii: { xs: '3px', sm: '6px', lg: '8px' },
  space: { sm: '8px', md: '20px', rowGap: '0px', colGap: '8px' },
  fonts: { sans: 'var(--text)', mono: 'var(--text)' },
  fontSizes: { root: '15px' },
  sizes: { rootWidth: '300px', controlWidth: '168px', numberInputMinWidth: '84px', rowHeight: '40px' },
  shadows: { level1: 'none', level2: 'none' },
  borderWidths: { input: '1px', focus: '2px', hover: '1px', folder: '1px' },
  fontWeights: { folder: '700' },
}
