uniform vec3 core;
uniform vec3 rim;
varying float vLight;
varying float vSoft;

/* A point is white to near its edge; a glow fades from its middle. */
void main() {
  float out01 = min(1.0, 2.0 * length(gl_PointCoord - 0.5));
  float sharp = 1.0 - smoothstep(0.55, 1.0, out01);
  float faded = pow(1.0 - out01, 1.5);
  float shown = vLight * mix(sharp, faded, vSoft);
  if (shown < 0.004) discard;
  gl_FragColor = vec4(mix(core, rim, mix(smoothstep(0.2, 1.0, out01), 0.75, vSoft)), shown);
  #include <colorspace_fragment>
}
