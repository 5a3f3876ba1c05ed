import type { View } from '../../../session/view.ts';
import { promptParts } from '../../face/long-prompt.ts';

/** What was answered, refused or judged since the question was put, and what of a long prompt is no question. */
export function Remark({ view }: { readonly view: View }) {
  const before = promptParts(view.prompt).before;
  return (
    <div className="remark" role="status">
      {view.remark !== undefined && view.remark !== '' && <p>{view.remark}</p>}
      {before !== '' && <p>{before}</p>}
    </div>
  );
}
