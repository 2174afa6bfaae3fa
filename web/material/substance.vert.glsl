attribute float substance;
uniform vec3 substanceColour[SUBSTANCES];
/* metalness, roughness, unlit, striped */
uniform vec4 substanceSurface[SUBSTANCES];
flat varying vec3 vSubstanceColour;
flat varying vec4 vSurface;
varying vec2 vAcross;
varying float vAlong;

void chooseSubstance(vec3 place) {
  int index = int(substance + 0.5);
  vSubstanceColour = substanceColour[index];
  vSurface = substanceSurface[index];
  vAcross = place.xy;
  vAlong = place.z;
}
