/** How large a millimetre at the middle of the view is on the screen. */
import type { CameraRig } from '../camera-rig.ts'

export const pixelsPerMillimetre = ({ camera, height, now }: CameraRig): number =>
  height / 2 / Math.tan((camera.fov * Math.PI) / 360) / now.distance
