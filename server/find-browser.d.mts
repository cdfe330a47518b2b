export function browserCandidates(
  platform: NodeJS.Platform,
  env: Record<string, string | undefined>,
  home: string,
): string[];

export function findBrowser(world?: {
  platform?: NodeJS.Platform;
  env?: Record<string, string | undefined>;
  home?: string;
  exists?: (path: string) => boolean;
}): string | null;
