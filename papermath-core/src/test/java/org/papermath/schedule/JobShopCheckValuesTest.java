package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

/** Job shops of the literature: a job is a task, a machine a resource, and everything goes on day and night. */
class JobShopCheckValuesTest {
    static List<Row> shops() {
        return CheckValues.read("job_shop");
    }

    private static int[][] jobs(Row row) {
        return Arrays.stream(row.text("jobs").split("/"))
                .map(job -> Arrays.stream(job.strip().split(" "))
                        .mapToInt(Integer::parseInt)
                        .toArray())
                .toArray(int[][]::new);
    }

    /** Each step is a task of its own: the shop knows no other order than that of the job. */
    static Workload work(int[][] jobs) {
        Workload.Builder work = Workload.in(Studios.WEEK);
        for (int machine = 0; machine < jobs[0].length / 2; machine++) {
            work.resource(Resource.of("machine " + machine, 1));
        }
        for (int job = 0; job < jobs.length; job++) {
            for (int step = 0; step < jobs[job].length / 2; step++) {
                Task.Builder task = Task.of(job + "/" + step)
                        .group("job " + job)
                        .phase(Phase.waiting("runs", Duration.ofMinutes(jobs[job][2 * step + 1]))
                                .holding("machine " + jobs[job][2 * step], 1));
                if (step > 0) {
                    task.after(job + "/" + (step - 1));
                }
                work.task(task.build());
            }
        }
        return work.build();
    }

    @ParameterizedTest
    @MethodSource("shops")
    void isDoneSoonEnough(Row row) {
        Workload work = work(jobs(row));
        Timetable timetable = Timetable.from(work, Studios.MONDAY);
        Checks.check(timetable);
        double optimum = row.number("optimum");
        double found = timetable.span().orElseThrow().toMinutes();
        assertThat(found).as(row + ": " + found).isBetween(optimum, optimum * (1 + row.number("most")));
    }

    @ParameterizedTest
    @MethodSource("shops")
    void boundsLieBelowTheOptimum(Row row) {
        int[][] jobs = jobs(row);
        double optimum = row.number("optimum");
        int[] load = new int[jobs[0].length / 2];
        for (int[] job : jobs) {
            boolean[] visited = new boolean[load.length];
            int length = 0;
            for (int i = 0; i < job.length; i += 2) {
                assertThat(visited[job[i]]).isFalse();
                visited[job[i]] = true;
                load[job[i]] += job[i + 1];
                length += job[i + 1];
            }
            assertThat((double) length).isLessThanOrEqualTo(optimum);
        }
        assertThat((double) Arrays.stream(load).max().orElseThrow()).isLessThanOrEqualTo(optimum);
    }

    /** The schedule of 55 keeps everything, by the same check that ours are held by. */
    @Test
    void theScheduleThatWasGivenIsOne() {
        Row row = CheckValues.row("job_shop", "case", "FT06");
        int[][] jobs = jobs(row);
        int[][] starts = Arrays.stream(row.text("schedule").split("/"))
                .map(job -> Arrays.stream(job.strip().split(" "))
                        .mapToInt(Integer::parseInt)
                        .toArray())
                .toArray(int[][]::new);
        int end = 0;
        for (int a = 0; a < 36; a++) {
            int from = starts[a / 6][a % 6];
            int to = from + jobs[a / 6][2 * (a % 6) + 1];
            end = Math.max(end, to);
            assertThat(a % 6 == 5 || starts[a / 6][a % 6 + 1] >= to).isTrue();
            for (int b = 0; b < a; b++) {
                if (jobs[a / 6][2 * (a % 6)] == jobs[b / 6][2 * (b % 6)]) {
                    int other = starts[b / 6][b % 6];
                    assertThat(other >= to || from >= other + jobs[b / 6][2 * (b % 6) + 1])
                            .isTrue();
                }
            }
        }
        assertThat(end).isEqualTo(55);
    }
}
