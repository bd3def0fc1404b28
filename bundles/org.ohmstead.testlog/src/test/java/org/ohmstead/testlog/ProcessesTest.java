// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ReadingJson;
import org.ohmstead.units.text.Messages;
import org.sqlite.SQLiteDataSource;

@Timeout(180)
class ProcessesTest {
    private static final int EACH = 60;

    @TempDir
    Path folder;

    /** Adds readings in a process of its own and prints the id of each as soon as it is acknowledged. */
    static final class Appender {
        private Appender() {}

        public static void main(String[] arguments) throws IOException, TestLogException {
            System.out.println("ready");
            System.out.flush();
            int first = System.in.read();
            try (TestLog log = TestLog.open(Path.of(arguments[0]))) {
                for (int number = 0; first >= 0 && number < Integer.parseInt(arguments[1]); number++) {
                    System.out.println(
                            log.append(SampleReadings.reading(number)).id());
                    System.out.flush();
                }
            }
        }
    }

    private Path file() {
        return folder.resolve(TestLog.FILE_NAME);
    }

    private Process start(int count) throws IOException, ClassNotFoundException {
        // What the readings' JSON needs at run time; this bundle itself never sees it.
        Class<?> databind = Class.forName("com.fasterxml.jackson.databind.JsonNode");
        Class<?> core = Class.forName("com.fasterxml.jackson.core.JsonParser");
        Class<?> annotations = Class.forName("com.fasterxml.jackson.annotation.JsonProperty");
        Stream<String> places = Stream.of(
                        Appender.class,
                        TestLog.class,
                        ReadingJson.class,
                        Project.class,
                        databind,
                        core,
                        annotations,
                        SQLiteDataSource.class,
                        Messages.class)
                .map(ProcessesTest::placeOf);
        String classPath = Stream.concat(places, Stream.of(placeOfTexts()))
                .distinct()
                .collect(Collectors.joining(File.pathSeparator));
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        classPath,
                        Appender.class.getName(),
                        file().toString(),
                        Integer.toString(count))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    /** Returns where the texts lie: with the classes, except where something else than the build compiled them. */
    private static String placeOfTexts() {
        String name = "org/ohmstead/testlog/internal/messages.properties";
        try {
            Path file = Path.of(TestLog.class.getResource("/" + name).toURI());
            return file.toString().substring(0, file.toString().length() - name.length() - 1);
        } catch (URISyntaxException broken) {
            throw new IllegalStateException(broken);
        }
    }

    private static String placeOf(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException broken) {
            throw new IllegalStateException(broken);
        }
    }

    private static void go(Process process) throws IOException {
        process.getOutputStream().write('\n');
        process.getOutputStream().flush();
    }

    @Test
    void twoProcessesAddingToANewLogLoseNothingAndForkNothing() throws Exception {
        List<Process> processes = List.of(start(EACH), start(EACH));
        List<BufferedReader> outputs = new ArrayList<>();
        for (Process process : processes) {
            BufferedReader output = process.inputReader(StandardCharsets.UTF_8);
            assertEquals("ready", output.readLine());
            outputs.add(output);
        }
        for (Process process : processes) {
            go(process);
        }
        Set<String> acknowledged = new HashSet<>();
        for (BufferedReader output : outputs) {
            output.lines().forEach(acknowledged::add);
        }
        for (Process process : processes) {
            assertTrue(process.waitFor(60, TimeUnit.SECONDS));
            assertEquals(0, process.exitValue());
        }
        try (TestLog log = TestLog.openReadOnly(file())) {
            assertEquals(2 * EACH, acknowledged.size(), "no id was given twice");
            assertEquals(acknowledged, log.readings().stream().map(LogEntry::id).collect(Collectors.toSet()));
            VerifyReport report = log.verify();
            assertEquals(List.of(), report.faults());
            assertEquals(2 * EACH, report.entriesChecked());
        }
    }

    @Test
    void whatAKilledProcessHadAcknowledgedIsThere() throws Exception {
        Process process = start(100_000);
        BufferedReader output = process.inputReader(StandardCharsets.UTF_8);
        assertEquals("ready", output.readLine());
        go(process);
        List<String> acknowledged = new ArrayList<>();
        while (acknowledged.size() < 40) {
            acknowledged.add(output.readLine());
        }
        // Through its handle, because the process itself would also close the output that is still to be read.
        assertTrue(process.toHandle().destroyForcibly());
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        output.lines().filter(line -> line.matches("R\\d{4,}")).forEach(acknowledged::add);
        try (TestLog log = TestLog.open(file())) {
            List<String> there = log.readings().stream().map(LogEntry::id).toList();
            assertTrue(
                    there.containsAll(acknowledged), "acknowledged " + acknowledged.size() + ", there " + there.size());
            assertTrue(there.size() <= acknowledged.size() + 1, "at most one was on its way");
            assertTrue(log.verify().intact());
            log.append(SampleReadings.reading(1));
            assertTrue(log.verify().intact());
        }
    }

    @Test
    void severalThreadsMayAddThroughOneLog() throws Exception {
        try (TestLog log = TestLog.open(file())) {
            List<Thread> threads = new ArrayList<>();
            List<TestLogException> failures = new ArrayList<>();
            for (int thread = 0; thread < 4; thread++) {
                threads.add(new Thread(() -> addSome(log, failures)));
            }
            threads.forEach(Thread::start);
            for (Thread thread : threads) {
                thread.join();
            }
            assertEquals(List.of(), failures);
            assertEquals(40, log.readings().size());
            assertTrue(log.verify().intact());
        }
    }

    private static void addSome(TestLog log, List<TestLogException> failures) {
        try {
            for (int number = 0; number < 10; number++) {
                log.append(SampleReadings.reading(number));
            }
        } catch (TestLogException failure) {
            synchronized (failures) {
                failures.add(failure);
            }
        }
    }
}
