/** three.js's renderer as the stage uses it. */
import { WebGLRenderer } from 'three';

import type { Painter } from './stage';

/** How long to wait between looks at whether a frame is drawn, and for how long at most. */
const lookEveryMs = 8;
const giveUpMs = 10_000;

/** None where the browser can't draw in 3D. `edges`: smooth them, at a cost. */
export function webglPainter(canvas: HTMLCanvasElement, edges: boolean): Painter | undefined {
  let renderer: WebGLRenderer;
  try {
    renderer = new WebGLRenderer({ canvas, antialias: edges, alpha: true, powerPreference: 'low-power' });
  } catch {
    return undefined;
  }
  // Nothing is drawn where nothing is: the table shows through, in light and dark.
  renderer.setClearColor(0, 0);
  const gl = renderer.getContext();
  let waiting = 0;
  return {
    render: (scene, camera) => renderer.render(scene, camera),
    setSize: (width, height, ratio) => {
      renderer.setPixelRatio(ratio);
      renderer.setSize(width, height, false);
    },
    figures: () => ({ calls: renderer.info.render.calls, triangles: renderer.info.render.triangles }),
    whenDrawn: (then) => {
      clearTimeout(waiting);
      if (!(gl instanceof WebGL2RenderingContext)) return then();
      const fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
      if (!fence) return then();
      gl.flush();
      const start = performance.now();
      const look = () => {
        const done = gl.getSyncParameter(fence, gl.SYNC_STATUS) === gl.SIGNALED;
        if (!done && performance.now() - start < giveUpMs) {
          waiting = window.setTimeout(look, lookEveryMs);
          return;
        }
        gl.deleteSync(fence);
        then();
      };
      waiting = window.setTimeout(look, 0);
    },
    dispose: () => {
      clearTimeout(waiting);
      renderer.dispose();
      // Browsers keep only so many contexts: give this one back now.
      gl.getExtension('WEBGL_lose_context')?.loseContext();
    },
  };
}
