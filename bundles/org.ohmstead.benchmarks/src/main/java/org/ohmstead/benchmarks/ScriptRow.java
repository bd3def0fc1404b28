// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A row that one of the scripts product/measure-* has: it compares with its own reference in turns or one after the other, looks whether
 * both come to the same, and prints lines "measured NAME ours=NUMBER reference=NUMBER unit=UNIT" beside what it says to people.
 */
final class ScriptRow implements Row {
    private static final System.Logger LOG = System.getLogger("bench");
    private static final Pattern MEASURED =
            Pattern.compile("measured (\\S+) ours=(\\S+?)(?: reference=(\\S+))? unit=(\\S+)");

    private final String name;
    private final String about;
    private final List<String> command;
    private final Map<String, Goal> goals = new LinkedHashMap<>();

    /**
     * Makes a row.
     *
     * @param name its name
     * @param about what is measured against what
     * @param command the script in product/ and its words
     */
    ScriptRow(String name, String about, String... command) {
        this.name = name;
        this.about = about;
        this.command = List.of(command);
    }

    /** Adds a line of the script by its name, and the goal of it. */
    ScriptRow with(String line, Goal goal) {
        goals.put(line, goal);
        return this;
    }

    /** Returns the script's name in product/. */
    String script() {
        return command.get(0);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public String about() {
        return about;
    }

    @Override
    public List<Outcome> measure(Room room) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(command);
        words.set(0, room.checkout().resolve("product").resolve(command.get(0)).toString());
        ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
        builder.environment().put("PRODUCT", room.product().toString());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().put("TMPDIR", room.folder().toString());
        Process process = builder.start();
        List<String> lines = new ArrayList<>();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                lines.add(line);
                LOG.log(System.Logger.Level.INFO, "    {0}", line);
            }
        }
        int code = process.waitFor();
        if (code != 0) {
            throw new IOException("product/" + command.get(0) + " ended with exit code " + code + ": "
                    + (lines.isEmpty() ? "" : lines.get(lines.size() - 1)));
        }
        return outcomes(lines);
    }

    /** Returns the lines of the table for what the script said. */
    List<Outcome> outcomes(List<String> said) throws IOException {
        Map<String, Outcome> found = new LinkedHashMap<>();
        for (String line : said) {
            Matcher matcher = MEASURED.matcher(line);
            if (matcher.matches() && goals.containsKey(matcher.group(1))) {
                OptionalDouble reference = matcher.group(3) == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(Double.parseDouble(matcher.group(3)));
                found.put(
                        matcher.group(1),
                        new Outcome(
                                matcher.group(1),
                                "product/" + String.join(" ", command),
                                OptionalDouble.of(Double.parseDouble(matcher.group(2))),
                                reference,
                                matcher.group(4),
                                goals.get(matcher.group(1)),
                                "as the script says above"));
            }
        }
        for (String wanted : goals.keySet()) {
            if (!found.containsKey(wanted)) {
                throw new IOException("product/" + command.get(0) + " did not say how " + wanted + " came out.");
            }
        }
        return goals.keySet().stream().map(found::get).toList();
    }
}
