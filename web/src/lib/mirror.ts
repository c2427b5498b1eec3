/**
 * The measured panel as a mirror under a virtual board, on the graphics card.
 *
 * Every pixel's ray meets the measured height, is mirrored by the measured slopes, and ends on the board; what is
 * drawn is the board's line there. Frames as docs/frames.md has them, mm.
 */
import { fragment, vertex } from './mirror.glsl';
import type { Surface } from './surface';

export type Vec3 = [number, number, number];

/** Where the eye is and how it looks. */
export interface Eye {
  at: Vec3;
  right: Vec3;
  down: Vec3;
  ahead: Vec3;
  /** Focal length over the width of the picture. */
  focal: number;
  /** Radial distortion. */
  k1: number;
}

/** Where the board is and what it shows. */
export interface VirtualBoard {
  middle: Vec3;
  u: Vec3;
  v: Vec3;
  /** Lit width and height. */
  size: [number, number];
  /** One black and one white line together. */
  pitch: number;
  /** Turn of the lines, radians; 0 has them run up and down. */
  turn: number;
  /** How far the lines are slid across themselves. */
  slid: number;
}

export interface Look {
  eye: Eye;
  board: VirtualBoard;
  /** Times the deviation is exaggerated. */
  times: number;
  /** Which surface, by its place in the list. */
  surface: number;
}

export interface Mirror {
  /** Takes other surfaces in place of those it has. */
  load: (surfaces: Surface[]) => void;
  /** Draws at the canvas's own size. */
  draw: (look: Look) => void;
  /** Board place `u, v` in mm and 1 where the board is mirrored, four values a pixel, rows from the bottom. */
  boardPoints: (look: Look, width: number, height: number) => Float32Array;
  close: () => void;
}

/** A renderer on a canvas for some surfaces; none where the browser has no WebGL 2. */
export function openMirror(canvas: HTMLCanvasElement, surfaces: Surface[]): Mirror | null {
  const gl = canvas.getContext('webgl2', { antialias: false, alpha: false, powerPreference: 'high-performance' });
  if (!gl) return null;
  const program = link(gl);
  gl.useProgram(program);
  const at = (name: string) => gl.getUniformLocation(program, name);
  const places = Object.fromEntries(UNIFORMS.map((name) => [name, at(name)]));
  let textures: (readonly [WebGLTexture, WebGLTexture])[] = [];
  load(surfaces);
  gl.uniform1i(at('slopes'), 0);
  gl.uniform1i(at('heights'), 1);

  function load(all: Surface[]) {
    textures.flat().forEach((one) => gl!.deleteTexture(one));
    surfaces = all;
    textures = all.map((one) => [texture(gl!, one, one.slopes), texture(gl!, one, one.heights)] as const);
  }
  function set(look: Look, width: number, height: number, asNumbers: boolean) {
    const { eye, board } = look;
    const surface = surfaces[look.surface]!;
    textures[look.surface]!.forEach((one, unit) => {
      gl!.activeTexture(gl!.TEXTURE0 + unit);
      gl!.bindTexture(gl!.TEXTURE_2D, one);
    });
    const { x0_mm, y0_mm, step_mm, nx, ny } = surface.grid;
    gl!.uniform4f(places.grid!, x0_mm, y0_mm, step_mm, surface.middle_mm);
    gl!.uniform2f(places.cells!, nx, ny);
    gl!.uniform4f(places.laid!, Math.cos(surface.laid.turn), Math.sin(surface.laid.turn), ...surface.laid.shift);
    gl!.uniform3f(places.eye!, ...eye.at);
    gl!.uniform3f(places.eyeRight!, ...eye.right);
    gl!.uniform3f(places.eyeDown!, ...eye.down);
    gl!.uniform3f(places.ahead!, ...eye.ahead);
    gl!.uniform4f(places.lens!, eye.focal * width, eye.k1, width, height);
    gl!.uniform3f(places.boardMiddle!, ...board.middle);
    gl!.uniform3f(places.boardU!, ...board.u);
    gl!.uniform3f(places.boardV!, ...board.v);
    gl!.uniform2f(places.boardSize!, ...board.size);
    gl!.uniform4f(places.lines!, board.pitch, Math.cos(board.turn), Math.sin(board.turn), board.slid);
    gl!.uniform1f(places.times!, look.times);
    gl!.uniform1i(places.asNumbers!, asNumbers ? 1 : 0);
    gl!.viewport(0, 0, width, height);
    gl!.drawArrays(gl!.TRIANGLES, 0, 3);
  }

  return {
    load,
    draw: (look) => set(look, canvas.width, canvas.height, false),
    boardPoints: (look, width, height) => {
      if (!gl.getExtension('EXT_color_buffer_float')) throw new Error('no float pictures here');
      const [buffer, target] = [gl.createFramebuffer(), gl.createTexture()];
      gl.activeTexture(gl.TEXTURE0);
      gl.bindTexture(gl.TEXTURE_2D, target);
      gl.texStorage2D(gl.TEXTURE_2D, 1, gl.RGBA32F, width, height);
      gl.bindFramebuffer(gl.FRAMEBUFFER, buffer);
      gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, target, 0);
      set(look, width, height, true);
      const points = new Float32Array(4 * width * height);
      gl.readPixels(0, 0, width, height, gl.RGBA, gl.FLOAT, points);
      gl.bindFramebuffer(gl.FRAMEBUFFER, null);
      gl.deleteFramebuffer(buffer);
      gl.deleteTexture(target);
      return points;
    },
    close: () => gl.getExtension('WEBGL_lose_context')?.loseContext(),
  };
}

const UNIFORMS = ['grid', 'cells', 'laid', 'eye', 'eyeRight', 'eyeDown', 'ahead', 'lens', 'boardMiddle', 'boardU', 'boardV', 'boardSize', 'lines', 'times', 'asNumbers'];

function link(gl: WebGL2RenderingContext): WebGLProgram {
  const program = gl.createProgram();
  for (const [kind, text] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment]] as const) {
    const shader = gl.createShader(kind)!;
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS)) throw new Error(`the mirror's program: ${gl.getProgramInfoLog(program) ?? ''}`);
  return program;
}

/** Four floats a cell, fetched one by one: no extension is needed to read them. */
function texture(gl: WebGL2RenderingContext, { grid }: Surface, values: Float32Array): WebGLTexture {
  const made = gl.createTexture();
  gl.bindTexture(gl.TEXTURE_2D, made);
  gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA32F, grid.nx, grid.ny, 0, gl.RGBA, gl.FLOAT, values);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST);
  return made;
}
