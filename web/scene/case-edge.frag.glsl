uniform vec3 colour;
uniform float opacity;
/* Middle of the machine in x and z, and its half sizes [mm] */
uniform vec4 plan;
/* Height above which an edge is the rim [mm] */
uniform float rim;
varying vec3 vPlace;

/* The rim fades where it would cross the gears: on the viewer's side. */
void main() {
  vec2 outward = (vPlace.xz - plan.xy) / plan.zw;
  vec2 toViewer = normalize(cameraPosition.xz - plan.xy + vec2(0.0001));
  float near = dot(outward, toViewer);
  float shown = vPlace.y > rim ? 1.0 - 0.92 * smoothstep(-0.1, 0.7, near) : 1.0;
  gl_FragColor = vec4(colour, opacity * shown);
  #include <colorspace_fragment>
}
