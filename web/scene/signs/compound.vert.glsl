attribute float gap;
varying float vGap;
varying float vLight;

/* Lit at the corners, like the bristles: the coat is dark, so light only has to tell which way it faces. */
void main() {
  mat4 placed = modelMatrix * instanceMatrix;
  vec3 facing = normalize(mat3(placed) * normal);
  vLight = 0.72 + 0.4 * abs(dot(facing, vec3(-0.41, 0.79, 0.46)));
  vGap = gap;
  gl_Position = projectionMatrix * viewMatrix * placed * vec4(position, 1.0);
}
