uniform vec3 colour;
/* From stroke to stroke [mm] */
uniform float pitch;
/* 1 where rows meet, 0 where they clear each other */
uniform float hatched;
varying vec3 vPlace;

/* Strokes at 45 degrees in every plane: they run down the walls and across the lid. */
void main() {
  float stroke = abs(fract((vPlace.x + vPlace.y + vPlace.z) / pitch) - 0.5);
  float line = hatched * (1.0 - smoothstep(0.16, 0.16 + fwidth(vPlace.x + vPlace.y + vPlace.z) / pitch, stroke));
  gl_FragColor = vec4(colour, max(0.07, 0.85 * line));
  #include <colorspace_fragment>
}
