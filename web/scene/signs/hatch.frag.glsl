uniform vec3 colour;
/* From stroke to stroke [mm] */
uniform float pitch;
/* 1 where rows meet, 0 where they clear each other */
uniform float hatched;
varying vec3 vPlace;

/* Strokes at 45 degrees, straight along the walls, which run mostly towards the viewer. */
void main() {
  float along = vPlace.z + vPlace.y;
  float stroke = abs(fract(along / pitch) - 0.5);
  float line = hatched * (1.0 - smoothstep(0.16, 0.16 + fwidth(along) / pitch, stroke));
  gl_FragColor = vec4(colour, max(0.07, 0.85 * line));
  #include <colorspace_fragment>
}
