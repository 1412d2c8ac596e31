/** Names of files that every system takes. */
export function fileName(title: string, ending: string): string {
  const plain = title
    .replace(/[\u0000-\u001f<>:"/\\|?*]/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, 80)
    .trim();
  return `${plain || 'project'}${ending}`;
}
