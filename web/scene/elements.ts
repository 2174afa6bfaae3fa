/** The classes of three.js that the scene's elements name; only these are in the bundle. */
import { extend } from '@react-three/fiber'
import {
  CylinderGeometry,
  DirectionalLight,
  Group,
  HemisphereLight,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  ShadowMaterial,
} from 'three'

export const registerElements = (): void => {
  extend({
    CylinderGeometry,
    DirectionalLight,
    Group,
    HemisphereLight,
    Mesh,
    MeshBasicMaterial,
    PlaneGeometry,
    ShadowMaterial,
  })
}
