/** How long a picture takes until it is really drawn, learnt without waiting for it. */

/** Between two looks at the fence [ms] */
const LOOK_EVERY = 4
/** A fence that is not passed by then belongs to a context that is lost [ms] */
const GIVEN_UP = 10_000

/** Lays a fence behind what was just asked for and tells the time since `began` once it has been passed. */
export function whenDrawn(gl: WebGL2RenderingContext, began: number, tell: (cost: number) => void): void {
  const fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0)
  if (fence === null) return
  gl.flush()
  const look = () => {
    const cost = performance.now() - began
    const passed = gl.getSyncParameter(fence, gl.SYNC_STATUS) === gl.SIGNALED
    if (!passed && cost < GIVEN_UP) setTimeout(look, LOOK_EVERY)
    else {
      gl.deleteSync(fence)
      tell(cost)
    }
  }
  setTimeout(look, LOOK_EVERY)
}
