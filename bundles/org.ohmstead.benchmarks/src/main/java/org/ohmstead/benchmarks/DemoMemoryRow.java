// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** The demo in a small heap: the main job without a window, then the workbench on its project. */
final class DemoMemoryRow implements Row {
    private static final int HEAP_MEGABYTES = 300;
    private static final Goal GOAL = new Goal.AtMost(HEAP_MEGABYTES);
    /** A rating of the demo falls short, and its word says so by this code. */
    private static final int FELL_SHORT = 1;

    @Override
    public String name() {
        return "demo-memory";
    }

    @Override
    public String about() {
        return "the demo's main job, and the workbench on its project, each in a heap of " + HEAP_MEGABYTES + " MB";
    }

    @Override
    public List<Outcome> measure(Room room) throws IOException, InterruptedException {
        Path output = room.folder().resolve("demo");
        Map<String, String> environment = Map.of(
                "OHMSTEAD_DEMO_OUTPUT",
                output.toString(),
                "OHMSTEAD_DEMO_DATA",
                room.checkout().resolve("demo-data").toString());
        HeapRun job = new HeapRun(room, HEAP_MEGABYTES);
        int code = job.run(List.of(), "", environment, "demo");
        Path project = output.resolve("larkspur.ohmstead");
        if (code > FELL_SHORT || !Files.exists(project.resolve("log.db"))) {
            return List.of(failed("demo-memory-job", code, job));
        }
        HeapRun window = new HeapRun(room, HEAP_MEGABYTES);
        Path report = room.folder().resolve("start.txt");
        List<String> screen = System.getenv("DISPLAY") == null
                ? List.of("xvfb-run", "-a", "-s", "-screen 0 1600x1000x24")
                : List.of();
        code = window.run(screen, "-Dohmstead.start.report=" + report, environment, project.toString());
        Outcome first = done("demo-memory-job", "the demo's main job", job);
        return List.of(
                first,
                code == 0 && Files.exists(report)
                        ? done("demo-memory-workbench", "the workbench until it can be used", window)
                        : failed("demo-memory-workbench", code, window));
    }

    private static Outcome done(String name, String about, HeapRun run) {
        return new Outcome(
                name, about, run.mostMegabytes(), OptionalDouble.empty(), "MB", GOAL, "most of the heap ever in use");
    }

    private static Outcome failed(String name, int code, HeapRun run) {
        String said = run.said().strip();
        return new Outcome(
                name,
                "in a heap of " + HEAP_MEGABYTES + " MB",
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "MB",
                GOAL,
                "ended with exit code " + code + ": " + said.substring(0, Math.min(300, said.length())));
    }
}
