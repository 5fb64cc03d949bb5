/** Hands the server the bytes of a mesh file, through the editor's own file system, so that it works in the browser too. */
import * as vscode from 'vscode';
import type { ReadFileParams } from '../server/editor/protocol.ts';
import type { WholeFile } from './filePieces.ts';
import { findInside } from './findInside.ts';

/** Larger files are not sent; the server would refuse them. */
const mostBytes = 64 * 1024 * 1024;

/** Where a file of this computer lies once links are followed; a browser has nobody to ask. */
export type RealPath = ((path: string) => Promise<string>) | null;

/** Reads files from the folder of a boat file and below it, and nothing else, whatever the server asks for. */
export const createFileReader =
  (realPath: RealPath) =>
  async ({ uri, boatUri }: ReadFileParams): Promise<WholeFile> => {
    // Joined so that steps upward in it are taken before anyone asks where it lies.
    const asked = vscode.Uri.joinPath(vscode.Uri.parse(uri, true), '.');
    const folder = vscode.Uri.joinPath(vscode.Uri.parse(boatUri, true), '..');
    try {
      const file = await findInside(asked, folder, {
        follow:
          realPath && asked.scheme === 'file' ? async address => vscode.Uri.file(await realPath(address.fsPath)) : null,
        isLink: async address => {
          const { type } = await vscode.workspace.fs.stat(address);
          return (type & vscode.FileType.SymbolicLink) !== 0;
        },
        below: (address, steps) => vscode.Uri.joinPath(address, ...steps),
      });
      if (!file) return { status: 'outside' };
      const { size, type } = await vscode.workspace.fs.stat(file);
      if ((type & vscode.FileType.File) === 0) return { status: 'unreadable', problem: 'it is no file.' };
      if (size > mostBytes)
        return { status: 'unreadable', problem: `it has ${Math.round(size / 1024 / 1024)} MB, more than 64 MB.` };
      return { status: 'read', bytes: await vscode.workspace.fs.readFile(file) };
    } catch (problem) {
      if (isMissing(problem)) return { status: 'missing' };
      return { status: 'unreadable', problem: problem instanceof Error ? problem.message : String(problem) };
    }
  };

/** As the editor says it, or the system. */
const isMissing = (problem: unknown): boolean =>
  problem instanceof Error && 'code' in problem && (problem.code === 'FileNotFound' || problem.code === 'ENOENT');
