/* Angle turned in one drawn frame [rad], signed about the arc's own axis. */
uniform float turned;
uniform vec3 colour;
varying vec2 vPlace;

const float TURN = 6.28318530718;

/* Behind the mark the paint fades from 0.8 to 0 over what it passed in the frame; beyond a turn the ring is full. */
void main() {
  float behind = atan(vPlace.y, vPlace.x) * -sign(turned);
  behind = behind < 0.0 ? behind + TURN : behind;
  float span = abs(turned);
  float fading = behind < span ? 0.8 * (1.0 - behind / span) : 0.0;
  gl_FragColor = vec4(colour, span >= TURN ? 0.45 : fading);
  #include <colorspace_fragment>
}
