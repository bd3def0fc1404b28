// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The fuzzer in a virtual machine of its own, at one target. What it reaches it keeps for the next time. */
final class FuzzerRun {
    private static final Pattern INPUTS = Pattern.compile("stat::number_of_executed_units:\\s*(\\d+)");
    private static final Pattern COVERAGE = Pattern.compile("\\bcov: (\\d+)");
    /** What a reader needs none of; a fuzzer opens each jar of its class path again and again. */
    private static final Pattern NEEDLESS = Pattern.compile(
            "(org\\.eclipse|org\\.apache|wrapped\\.org\\.apache|com\\.ibm|bc|org\\.ohmstead\\..*\\.ui[_-]).*\\.jar");

    private static final List<String> JAVA = List.of(
            "-Xmx512m",
            "-XX:+UseSerialGC",
            "-XX:+EnableDynamicAgentLoading",
            "-Djava.awt.headless=true",
            "-Duser.language=en",
            "-Duser.country=",
            "-Duser.timezone=UTC");
    private static final Path MEMORY = Path.of("/dev/shm");
    private static final String HOOKS = "com.code_intelligence.jazzer.sanitizers.";
    private static final List<String> FUZZER = List.of(
            "--instrumentation_includes=org.ohmstead.**",
            "--custom_hook_includes=org.ohmstead.**",
            // The first slows each use of a pattern of our own down, and no pattern of ours comes from an input; the
            // second takes the link
            // to an instrument for an attack.
            "--disabled_hooks=" + HOOKS + "RegexInjection" + File.pathSeparator + HOOKS + "ServerSideRequestForgery",
            "--keep_going=100",
            "-rss_limit_mb=2048",
            // By the clock, so for what hangs only; Bounds holds an input to processor time.
            "-timeout=300",
            "-print_final_stats=1");

    private final Path bundle;
    private final Path work;
    private final Target target;

    /**
     * What came of it.
     *
     * @param inputs how many were tried
     * @param coverage how many places of the code were reached
     * @param finds files with inputs that the reader failed for
     */
    record Outcome(long inputs, long coverage, List<Path> finds) {}

    FuzzerRun(Path bundle, Path work, Target target) {
        this.bundle = bundle.toAbsolutePath();
        this.work = work.toAbsolutePath().resolve(target.word());
        this.target = target;
    }

    Outcome run(int seconds) throws IOException, InterruptedException {
        Path finds = Files.createDirectories(work.resolve("finds"));
        Path corpus = Files.createDirectories(work.resolve("corpus"));
        Path log = work.resolve("log.txt");
        Set<Path> before = inputs(finds);
        int status = new ProcessBuilder(command(seconds, finds, corpus))
                .directory(work.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start()
                .waitFor();
        String said = Files.readString(log, StandardCharsets.ISO_8859_1);
        Set<Path> after = inputs(finds);
        after.removeAll(before);
        long count = last(INPUTS, said);
        if (count < 0) {
            throw new IOException("the fuzzer ended with code " + status + "; what it said is in " + log);
        }
        return new Outcome(count, last(COVERAGE, said), List.copyOf(after));
    }

    private List<String> command(int seconds, Path finds, Path corpus) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(JAVA);
        if (Files.isWritable(MEMORY)) {
            // Thousands of small files a minute are no work for a disk.
            command.add("-Djava.io.tmpdir=" + MEMORY);
        }
        command.addAll(List.of("-cp", classPath(), "com.code_intelligence.jazzer.Jazzer"));
        command.add("--target_class=" + target.reader().getName());
        command.add("--reproducer_path=" + finds);
        command.addAll(FUZZER);
        command.add("-artifact_prefix=" + finds + File.separator);
        command.add("-max_total_time=" + seconds);
        command.add("-max_len=" + target.longestBytes());
        command.add("-dict=" + bundle.resolve("src/main/dictionaries").resolve(target.word() + ".dict"));
        command.add(corpus.toString());
        command.add(kept().toString());
        return command;
    }

    /** Where the inputs lie that the tests read. */
    private Path kept() {
        return bundle.resolve("src/test/resources/org/ohmstead/fuzz/KeptInputsTestInputs")
                .resolve(target.word());
    }

    private static String classPath() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(File::new)
                .filter(entry -> !NEEDLESS.matcher(entry.getName()).matches())
                // The fuzzer works in a folder of its own.
                .map(File::getAbsolutePath)
                .collect(Collectors.joining(File.pathSeparator));
    }

    /** What was found; a fuzzer leaves Java programs there too, and inputs that were only slow. */
    private static Set<Path> inputs(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().matches("(crash|timeout|oom)-.*"))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private static long last(Pattern pattern, String text) {
        long found = -1;
        Matcher matcher = pattern.matcher(text);
        while (matcher.find()) {
            found = Long.parseLong(matcher.group(1));
        }
        return found;
    }
}
