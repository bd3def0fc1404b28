// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;

/**
 * A command line with plug-ins that were built by hand, and what came of it.
 *
 * @param exitCode what the process would end with
 * @param out what went to standard output
 * @param err what went to standard error
 */
record BenchWords(int exitCode, String out, String err) {
    static final Path DEMO = Path.of("..", "..", "demo-data").toAbsolutePath().normalize();

    /** Runs words where nobody can be asked. */
    static BenchWords run(BuiltPlugins plugins, String... words) {
        return run(plugins, new ConsoleInput(new ByteArrayInputStream(new byte[0]), false), words);
    }

    static BenchWords run(BuiltPlugins plugins, ConsoleInput in, String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Ohmstead.run(words, new PrintStream(out), new PrintStream(err), in, plugins);
        return new BenchWords(exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** What is typed, or stands in a file. */
    static ConsoleInput typed(String... lines) {
        String text = lines.length == 0 ? "" : String.join("\n", lines) + "\n";
        return new ConsoleInput(new ByteArrayInputStream(text.getBytes(StandardCharsets.US_ASCII)), false);
    }

    JsonNode json() {
        try {
            return new ObjectMapper().readTree(out);
        } catch (JsonProcessingException e) {
            throw new AssertionError("not one JSON document: " + out + err, e);
        }
    }

    /** Returns a new project with the demo's plan and no log. */
    static Path project(Path folder) throws IOException {
        Path project = Files.createDirectories(folder.resolve("trial.ohmstead"));
        Files.copy(DEMO.resolve("larkspur.ohmstead/project.json"), project.resolve("project.json"));
        return project;
    }

    /** Returns a new folder with the demo's recordings of some steps. */
    static Path recordings(Path folder, List<String> stepIds) throws IOException {
        Path from = DEMO.resolve("recordings");
        Path to = Files.createDirectories(folder.resolve("recordings"));
        ObjectNode list = (ObjectNode)
                new ObjectMapper().readTree(from.resolve("recordings.json").toFile());
        ArrayNode wanted = JsonNodeFactory.instance.arrayNode();
        for (JsonNode each : list.get("recordings")) {
            if (stepIds.contains(each.get("step").asText())) {
                wanted.add(each);
                Files.copy(
                        from.resolve(each.get("file").asText()),
                        to.resolve(each.get("file").asText()));
            }
        }
        list.set("recordings", wanted);
        Files.writeString(to.resolve("recordings.json"), list.toString());
        return to;
    }

    static List<LogEntry> log(Path project) throws Exception {
        try (TestLog log = TestLog.openReadOnly(project.resolve(TestLog.FILE_NAME))) {
            if (!log.verify().intact()) {
                throw new AssertionError("the log is not whole");
            }
            return log.entries(LogQuery.everything());
        }
    }
}
