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

    @Option(names = "--driver", paramLabel = "ID", descriptionKey = "run.driver")
    private String driver;

    @Option(names = "--set", paramLabel = "NAME=VALUE", descriptionKey = "run.set")
    private List<String> settings = new ArrayList<>();

    @Option(names = "--measurement", paramLabel = "ID", split = ",", descriptionKey = "run.measurement")
    private List<String> measurements = new ArrayList<>();

    @Option(names = "--step", paramLabel = "ID", split = ",", descriptionKey = "run.step")
    private List<String> steps = new ArrayList<>();

    @Option(names = "--operator", paramLabel = "NAME", descriptionKey = "run.operator")
    private String operator = System.getProperty("user.name", "");

    @Option(names = "--yes", descriptionKey = "run.yes")
    private boolean yes;

    @Option(names = "--reason", paramLabel = "TEXT", defaultValue = USUAL_REASON, descriptionKey = "run.reason")
    private String reason;

    @Option(names = "--dry-run", descriptionKey = "run.dry-run")
    private boolean dryRun;

    @Option(names = "--go-on", descriptionKey = "run.go-on")
    private boolean goOn;

    @Option(names = "--no-rests", descriptionKey = "run.no-rests")
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
            throw new InputException(Texts.of("run.noReason"));
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
