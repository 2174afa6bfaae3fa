/* Diameter [mm], light 0 to 1, and whether it is a glow. */
attribute float size;
attribute float light;
attribute float soft;
/* Pixels of the canvas from its middle to its upper edge. */
uniform float halfHeight;
varying float vLight;
varying float vSoft;

void main() {
  vec4 seen = modelViewMatrix * vec4(position, 1.0);
  gl_Position = projectionMatrix * seen;
  gl_PointSize = max(2.5, size * projectionMatrix[1][1] * halfHeight / -seen.z);
  vLight = light;
  vSoft = soft;
}
