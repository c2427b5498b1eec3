/** What a move of one's own can be made with: what hangs in the shop. */
import type { Act, Rack, ToolTip } from '../../api/plan';

export const tipsFor = (rack: Rack, act: Act): ToolTip[] => (act === 'push' ? rack.tip : act === 'pull' ? rack.tab : rack.knock_down);
