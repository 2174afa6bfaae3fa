varying vec3 vLit;

void main() {
  gl_FragColor = vec4(vLit, 1.0);
  #include <colorspace_fragment>
}
