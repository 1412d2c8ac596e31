/** three.js's renderer as the stage uses it. */
import { WebGLRenderer } from 'three';

import type { Quality } from './quality';
import type { Painter } from './stage';

/** How long to wait between looks at whether a frame is drawn, and for how long at most. */
const lookEveryMs = 8;
const giveUpMs = 10_000;

/** Whether the browser says that it draws without a graphics chip. */
function withoutChip(): boolean {
  const gl = document.createElement('canvas').getContext('webgl2', { failIfMajorPerformanceCaveat: true });
  gl?.getExtension('WEBGL_lose_context')?.loseContext();
  return !gl;
}

/** None where the browser can't draw in 3D. `onHeld` is told, at the end, what three.js has not been told to let go. */
export function webglPainter(
  canvas: HTMLCanvasElement,
  quality: Quality,
  onHeld?: (held: { geometries: number; textures: number; programs: number }) => void,
): Painter | undefined {
  const slow = withoutChip();
  const smooth = quality === 'full' || (quality === 'own' && !slow);
  let renderer: WebGLRenderer;
  try {
    renderer = new WebGLRenderer({ canvas, antialias: smooth, alpha: true, powerPreference: 'low-power' });
  } catch {
    return undefined;
  }
  // Nothing is drawn where nothing is: the table shows through, in light and dark.
  renderer.setClearColor(0, 0);
  const gl = renderer.getContext();
  let waiting = 0;
  return {
    slow,
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
      const { memory, programs } = renderer.info;
      onHeld?.({ geometries: memory.geometries, textures: memory.textures, programs: programs?.length ?? 0 });
      renderer.dispose();
      // Browsers keep only so many contexts: give this one back now.
      gl.getExtension('WEBGL_lose_context')?.loseContext();
    },
  };
}
