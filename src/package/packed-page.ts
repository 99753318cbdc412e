/**
 * A page in Markdown as it stands in a package, which holds fewer files than the project: pictures and links that would
 * lead nowhere are left out, the words of such a link stay.
 *
 * @param isThere whether what is linked, as written there, is in the package
 */
export function packedPage(text: string, isThere: (link: string) => boolean): string {
  const leads = (link: string): boolean => /^(https?:|#)/.test(link) || isThere(link.replace(/#.*$/, ''));
  return text
    .replace(/^!\[[^\]]*\]\(([^)\s]+)\)\n\n?/gm, (picture, link: string) => (leads(link) ? picture : ''))
    .replace(/(?<!!)\[([^\]]+)\]\(([^)\s]+)\)/g, (whole, words: string, link: string) => (leads(link) ? whole : words));
}
