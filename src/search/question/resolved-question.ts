import { seenWritten } from '../../draft/point-of-view.js';
import { writeDraft } from '../../draft/yaml/read-draft.js';
import { formatOrder } from '../../order/order.js';
import { rankWritten } from '../../score/rank/presets.js';
import type { ProfilesAsked, Question } from './question.js';
import { EACH_KIND } from './question-table.js';

/** The keys for block orders that are searched. */
function profilesWritten({ lengths, threaded, treadled }: ProfilesAsked) {
  const said = (of: { readonly mirrored: boolean; readonly together?: boolean }): string =>
    ['search', of.mirrored && 'mirrored', of.together && 'together'].filter(Boolean).join(', ');
  return {
    ...(threaded && { profile: said(threaded) }),
    ...(treadled && { treadled: said(treadled) }),
    'profile lengths': lengths,
  };
}

/** The complete question as plain values under the keys of a question; it reads back as the same question. */
export function resolvedQuestion(question: Question) {
  const {
    structures,
    draft,
    treadlings,
    name,
    blocks,
    profile,
    treadled,
    profiles,
    yarns,
    lengths,
    orders,
    warp,
    weft,
  } = question;
  const { limits, loom, done, rank, same } = question;
  const { float, repeat, warpChanges, weftChanges, ...others } = limits;
  return {
    ...(draft
      ? { [question.onTheLoom ? 'on the loom' : 'draft']: draft.file, 'draft text': writeDraft(draft.draft) }
      : { structure: structures }),
    ...(treadlings.length > 0 && { treadling: treadlings }),
    ...(name && { 'name draft': { ...name, mirrored: name.mirrored ? ('yes' as const) : ('no' as const) } }),
    ...(blocks !== undefined && { blocks }),
    ...(profile.length > 0 && { profile }),
    ...(treadled.length > 0 && { treadled }),
    ...(profiles && profilesWritten(profiles)),
    yarns: Object.fromEntries(
      yarns.map(({ letter, name, hex, tex }) => [letter, { colour: hex, name, ...(tex !== undefined && { tex }) }]),
    ),
    ...(orders.length > 0 ? { orders: orders.map((order) => formatOrder(order, yarns)) } : { lengths }),
    ...(warp && !question.onTheLoom && { warp: formatOrder(warp, yarns) }),
    weft: weft.rule === 'fixed' ? formatOrder(weft.order, yarns) : weft.rule,
    tabby: yarns[question.tabby]!.letter,
    by: question.by,
    fill: question.fill,
    times: question.times,
    starts: question.starts,
    sett: question.sett,
    limits: {
      float: 'mm' in float ? `${float.mm} mm` : float.threads,
      repeat,
      ...(warpChanges !== undefined && { 'warp changes': warpChanges }),
      ...(weftChanges !== undefined && { 'weft changes': weftChanges }),
      ...others,
    },
    ...(loom && { loom: { ...loom, ...(loom.width !== undefined && { width: `${loom.width} mm` }) } }),
    ...(done && { done: done.files }),
    ...(done?.unlike !== undefined && { 'unlike done': done.unlike }),
    rank: rankWritten(rank),
    same: same.length > 0 ? same : ('shift' as const),
    show: question.oneOfEachKind ? EACH_KIND : question.show,
    seen: seenWritten(question.seen),
    seed: question.seed,
    tries: question.tries,
  };
}
