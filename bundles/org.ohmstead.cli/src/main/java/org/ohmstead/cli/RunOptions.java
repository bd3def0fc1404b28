// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** How a plan is carried out on a bench, as options. */
final class RunOptions {
    static final String USUAL_REASON = "confirmed on the command line with --yes";

    @Option(
            names = "--driver",
            paramLabel = "ID",
            description = "The bench: a driver's id or the last part of it, such as simulated. See: ohmstead plugins.")
    private String driver;

    @Option(
            names = "--set",
            paramLabel = "NAME=VALUE",
            description =
                    "A setting of the measurement, such as startDb=-30, or of the driver with \"driver.\" before its name, such"
                            + " as driver.seed=7. May be given several times.")
    private List<String> settings = new ArrayList<>();

    @Option(
            names = "--measurement",
            paramLabel = "ID",
            split = ",",
            description =
                    "What to measure at each step instead of what its stimulus asks for (power at the end point, or burst"
                            + " power): a measurement's id or the last part of it.")
    private List<String> measurements = new ArrayList<>();

    @Option(
            names = "--step",
            paramLabel = "ID",
            split = ",",
            description = "Only these steps of the plan, in the plan's order.")
    private List<String> steps = new ArrayList<>();

    @Option(
            names = "--operator",
            paramLabel = "NAME",
            description = "Who runs it (default: the name you are logged in under).")
    private String operator = System.getProperty("user.name", "");

    @Option(
            names = "--yes",
            description = "Say yes to every warning of the precautions; the log keeps who said so and why.")
    private boolean yes;

    @Option(
            names = "--reason",
            paramLabel = "TEXT",
            defaultValue = USUAL_REASON,
            description = "Why the warnings are no obstacle (default: ${DEFAULT-VALUE}).")
    private String reason;

    @Option(
            names = "--dry-run",
            description =
                    "Show every precaution, the bounds that end a step, what is in the way and the heat forecast; no bench is"
                            + " opened and nothing is logged.")
    private boolean dryRun;

    @Option(names = "--go-on", description = "Go on with the next step after one that gave no result.")
    private boolean goOn;

    @Option(
            names = "--no-rests",
            description = "Do not rest where the heat forecast wants it; the bounds that end a step still hold.")
    private boolean noRests;

    Optional<String> driver() {
        return Optional.ofNullable(driver);
    }

    List<String> settings() {
        return List.copyOf(settings);
    }

    List<String> measurements() {
        return List.copyOf(measurements);
    }

    List<String> steps() {
        return steps.stream().map(String::strip).toList();
    }

    /** Returns who runs it; may be empty. */
    String operator() {
        return operator.strip();
    }

    /** Returns who says yes; never empty, since the log wants a name beside a yes. */
    String who() {
        return operator.isBlank() ? "somebody who gave no name" : operator.strip();
    }

    boolean yes() {
        return yes;
    }

    String reason() throws InputException {
        if (reason.isBlank()) {
            throw new InputException("--reason is empty; write why the warnings are no obstacle.");
        }
        return reason.strip();
    }

    boolean dryRun() {
        return dryRun;
    }

    boolean goOn() {
        return goOn;
    }

    boolean rests() {
        return !noRests;
    }

    /** Returns whether anything is given that means nothing for recordings. */
    boolean given() {
        return driver != null
                || !settings.isEmpty()
                || !measurements.isEmpty()
                || !steps.isEmpty()
                || yes
                || dryRun
                || goOn
                || noRests;
    }
}
