/* A small studio to be mirrored in the metals, worked out instead of looked up: pale walls, a darker floor, three
   soft boxes. +z is towards the viewer, +y up. */
uniform float studio;

/* A soft box: middle direction, level direction to its right, tangents of its half angles. */
float softBox(vec3 direction, vec3 axis, vec3 right, vec2 halfSize, float blur) {
  float along = max(dot(direction, axis), 0.02);
  vec2 place = abs(vec2(dot(direction, right), dot(direction, cross(axis, right)))) / along;
  vec2 inside = 1.0 - smoothstep(halfSize - blur, halfSize + blur, place);
  vec2 spread = halfSize / (halfSize + 0.5 * blur);
  return inside.x * inside.y * spread.x * spread.y;
}

float wall(float up) {
  return up < 0.0 ? 0.16 + 0.2 * smoothstep(-0.8, 0.0, up) : 0.36 + 0.26 * up;
}

const vec3 KEY = vec3(-0.412, 0.788, 0.457);
const vec3 BACK = vec3(0.611, 0.407, -0.679);
const vec3 FLANK = vec3(0.765, 0.5, 0.406);

/* What a mirror of this roughness shows in a direction of the world. */
vec3 studioRadiance(vec3 direction, float rough) {
  float blur = 0.05 + 0.9 * rough * rough;
  vec3 light = vec3(wall(direction.y));
  light += vec3(4.6, 4.4, 4.1) * softBox(direction, KEY, vec3(0.743, 0.0, 0.669), vec2(0.49, 0.31), blur);
  light += vec3(3.6, 4.0, 4.6) * softBox(direction, BACK, vec3(-0.743, 0.0, -0.669), vec2(0.18, 0.67), blur);
  light += vec3(2.8, 2.9, 3.0) * softBox(direction, FLANK, vec3(0.469, 0.0, -0.883), vec2(0.14, 0.49), blur);
  return 1.35 * studio * light;
}

/* Light on a dull surface facing a direction of the world: boxes by their solid angle, walls by their mean. */
vec3 studioIrradiance(vec3 direction) {
  vec3 light = vec3(0.34 + 0.17 * direction.y);
  light += 0.68 * vec3(1.0, 0.96, 0.9) * max(dot(direction, KEY), 0.0);
  light += 0.42 * vec3(0.87, 0.96, 1.1) * max(dot(direction, BACK), 0.0);
  light += 0.2 * max(dot(direction, FLANK), 0.0);
  return PI * studio * light;
}
