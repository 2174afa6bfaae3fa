uniform vec3 bristleColour;
varying vec3 vLit;

/* Lit at the corners only: bristles are too thin and too many to be worth more where the processor draws. */
void main() {
  mat4 placed = modelMatrix * instanceMatrix;
  vec3 facing = normalize(mat3(placed) * normal);
  float light = 0.48 + 0.48 * max(dot(facing, vec3(-0.41, 0.79, 0.46)), 0.0) + 0.16 * facing.y;
  vLit = bristleColour * light * mix(0.75, 1.15, fract(float(gl_InstanceID) * 0.618));
  gl_Position = projectionMatrix * viewMatrix * placed * vec4(position, 1.0);
}
