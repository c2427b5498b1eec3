import { api, Problem } from '../api/client';
import type { Task } from '../api/types';

const EVERY_MS = 300;

/**
 * Asks after a task until it has ended, and hands every answer on. A lost connection is
 * asked again for a while, since the work goes on without us.
 */
export function watch(task: string, onAnswer: (answer: Task) => void): { ended: Promise<Task>; leave: () => void } {
  let left = false;
  const ended = (async () => {
    for (let lost = 0; ; ) {
      try {
        const answer = await api.task(task);
        lost = 0;
        if (!left) onAnswer(answer);
        if (left || !['queued', 'running'].includes(answer.state)) return answer;
      } catch (problem) {
        if (!(problem instanceof Problem && problem.code === 'offline') || ++lost > 40) throw problem;
      }
      await new Promise((resolve) => setTimeout(resolve, EVERY_MS));
    }
  })();
  return { ended, leave: () => (left = true) };
}
