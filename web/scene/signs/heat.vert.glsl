attribute float substance;
uniform vec3 tones[SUBSTANCES];
/* unlit, striped */
uniform vec2 paints[SUBSTANCES];
flat varying vec3 vTone;
flat varying vec2 vPaint;
varying vec2 vAcross;
varying vec3 vNormalInView;

void main() {
  int index = int(substance + 0.5);
  vTone = tones[index];
  vPaint = paints[index];
  vAcross = position.xy;
  #include <beginnormal_vertex>
  #include <defaultnormal_vertex>
  vNormalInView = transformedNormal;
  #include <begin_vertex>
  #include <project_vertex>
}
