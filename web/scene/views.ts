/** Camera bookmarks: from where each view looks, and what it must hold in the frame. */
import type { ViewName } from '../store/view.ts'

export interface ViewBookmark {
  readonly view: ViewName
  readonly name: string
  /** To the right, from straight in front [deg] */
  readonly yaw: number
  /** Above the level [deg] */
  readonly elevation: number
  /** What is kept in the frame. */
  readonly subject: 'machine' | 'gears' | 'worm' | 'mesh' | 'motor' | 'brushes' | 'apart'
}

export const VIEWS: readonly ViewBookmark[] = [
  { view: 'gears', name: 'Gears', yaw: 27, elevation: 35, subject: 'machine' },
  { view: 'top', name: 'Top', yaw: 0, elevation: 89, subject: 'gears' },
  { view: 'worm', name: 'Worm', yaw: 26, elevation: 50, subject: 'worm' },
  { view: 'mesh', name: 'Mesh', yaw: 4, elevation: 58, subject: 'mesh' },
  { view: 'motor', name: 'Motor', yaw: 38, elevation: 32, subject: 'motor' },
  { view: 'brushes', name: 'Brushes', yaw: 22, elevation: -2, subject: 'brushes' },
  { view: 'whole', name: 'Whole', yaw: 34, elevation: 30, subject: 'apart' },
]
