flat varying vec3 vTone;
flat varying vec2 vPaint;
varying vec2 vAcross;
varying vec3 vNormalInView;
uniform vec3 stripeColour;
/* 1 with the stripe painted, 0 without */
uniform float stripe;
/* 1 on the part that is spoken of, as substance.frag.glsl has it */
uniform float highlight;
uniform vec3 highlightColour;

/* Little light and shade, so that tone means temperature; marks keep their paint. */
void main() {
  vec3 normal = normalize(vNormalInView) * (gl_FrontFacing ? 1.0 : -1.0);
  float shade = 0.58 + 0.42 * clamp(0.35 + 0.75 * dot(normal, normalize(vec3(-0.25, 0.75, 0.6))), 0.0, 1.0);
  /* The stripe as substance.frag.glsl has it. */
  float onStripe = vPaint.y * stripe * step(cos(0.32), normalize(vAcross).y);
  vec3 shown = mix(vTone * shade, vTone, vPaint.x);
  shown = mix(shown, stripeColour, onStripe);
  float rim = pow(1.0 - abs(normal.z), 2.0);
  gl_FragColor = vec4(mix(shown, highlightColour, highlight * (0.16 + 0.6 * rim) * (1.0 - vPaint.x)), 1.0);
  #include <colorspace_fragment>
}
