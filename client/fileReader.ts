/** Hands the server the bytes of a mesh file, through the editor's own file system, so that it works in the browser too. */
import * as vscode from 'vscode';
import type { ReadFileParams, ReadFileResult } from '../server/editor/protocol.ts';
import { isBelow } from './isBelow.ts';

/** Larger files are not sent; the server would refuse them. */
const mostBytes = 64 * 1024 * 1024;

export async function readWorkspaceFile({ uri, boatUri }: ReadFileParams): Promise<ReadFileResult> {
  // Joined so that steps upward in it are taken before anyone asks where it lies.
  const file = vscode.Uri.joinPath(vscode.Uri.parse(uri, true), '.');
  if (!isInside(file, vscode.Uri.parse(boatUri, true))) return { status: 'outside' };
  try {
    const { size } = await vscode.workspace.fs.stat(file);
    if (size > mostBytes)
      return { status: 'unreadable', problem: `it has ${Math.round(size / 1024 / 1024)} MB, more than 64 MB.` };
    return { status: 'read', base64: base64Of(await vscode.workspace.fs.readFile(file)) };
  } catch (problem) {
    if (problem instanceof vscode.FileSystemError && problem.code === 'FileNotFound') return { status: 'missing' };
    return { status: 'unreadable', problem: problem instanceof Error ? problem.message : String(problem) };
  }
}

/** Inside the workspace folder of the boat file, or its own folder when it is in none. */
const isInside = (file: vscode.Uri, boat: vscode.Uri): boolean =>
  isBelow(file, vscode.workspace.getWorkspaceFolder(boat)?.uri ?? vscode.Uri.joinPath(boat, '..'));

function base64Of(bytes: Uint8Array): string {
  const chunk = 0x8000;
  let text = '';
  for (let at = 0; at < bytes.length; at += chunk) text += String.fromCharCode(...bytes.subarray(at, at + chunk));
  return btoa(text);
}
