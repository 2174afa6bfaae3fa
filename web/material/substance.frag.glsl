flat varying vec3 vSubstanceColour;
flat varying vec4 vSurface;
varying vec2 vAcross;
uniform vec3 stripeColour;
/* 1 with the stripe painted, 0 without */
uniform float stripe;
/* 1 on the part that is spoken of, more on the one that the light stands on */
uniform float highlight;
uniform vec3 highlightColour;
/* Stretch along z that is meant, in the part's own frame [mm] */
uniform vec2 meant;
/* How far all that is not meant steps back while a light stands somewhere */
uniform float faded;
uniform vec3 fadedColour;
varying float vAlong;

/* The stripe runs along the worm on its +y side, 0.32 rad to each side. */
float onStripe() {
  return vSurface.w * stripe * step(cos(0.32), normalize(vAcross).y);
}

vec3 painted(vec3 lit, vec3 normalInView, vec3 toViewer) {
  float shade = 0.62 + 0.38 * clamp(dot(normalInView, normalize(vec3(0.2, 0.8, 0.6))), 0.0, 1.0);
  vec3 shown = mix(lit, stripeColour * shade, onStripe());
  shown = mix(shown, vSubstanceColour, vSurface.z);
  float rim = pow(1.0 - clamp(dot(normalInView, toViewer), 0.0, 1.0), 2.0);
  float within = step(meant.x, vAlong) * step(vAlong, meant.y);
  shown = mix(shown, fadedColour, faded * (1.0 - within) * (1.0 - max(vSurface.z, onStripe())));
  float strength = min(1.0, highlight * (0.16 + 0.6 * rim)) * within;
  return mix(shown, highlightColour, strength * (1.0 - vSurface.z));
}
