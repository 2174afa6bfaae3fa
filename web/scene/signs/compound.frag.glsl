uniform vec3 colour;
/* Least gap over the mesh cycle, in thicknesses of the film */
varying float vGap;
varying float vLight;

/* The thread leaves its compound where it comes nearer than the film is thick; the coat thins out to that line. */
void main() {
  float coat = 1.0 - smoothstep(0.6, 1.0, vGap);
  gl_FragColor = vec4(colour * vLight, 0.9 * coat);
  #include <colorspace_fragment>
}
