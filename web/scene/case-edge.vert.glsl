varying vec3 vPlace;

void main() {
  vec4 place = modelMatrix * vec4(position, 1.0);
  vPlace = place.xyz;
  gl_Position = projectionMatrix * viewMatrix * place;
}
