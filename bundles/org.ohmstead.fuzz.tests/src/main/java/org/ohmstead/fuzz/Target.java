// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;

/** What can be fuzzed. */
enum Target {
    /** Quantities. */
    QUANTITIES(Quantities.class, Quantities::fuzzerTestOneInput, 1000, "quantities as people write them"),
    /** Networks. */
    NETWORKS(Networks.class, Networks::fuzzerTestOneInput, 2000, "load networks, stocks in one line, markings"),
    /** WAV. */
    WAV(WavFiles.class, WavFiles::fuzzerTestOneInput, 3000, "captures as WAV files"),
    /** Tables of samples. */
    CSV(CsvWaveforms.class, CsvWaveforms::fuzzerTestOneInput, 3000, "captures as tables of times and volts"),
    /** Projects. */
    PROJECT(Projects.class, Projects::fuzzerTestOneInput, 8500, "project.json and copies of unsaved edits"),
    /** What the log keeps. */
    RECORDS(Records.class, Records::fuzzerTestOneInput, 4500, "readings, figures, recordings and stocks as JSON"),
    /** Instruments. */
    SCPI(ScpiAnswers.class, ScpiAnswers::fuzzerTestOneInput, 6000, "answers of instruments, and command sets"),
    /** Packed projects. */
    ZIP(ProjectPacks.class, ProjectPacks::fuzzerTestOneInput, 8500, "packed projects"),
    /** Workbooks. */
    XLSX(XlsxTables.class, XlsxTables::fuzzerTestOneInput, 6000, "readings as a workbook"),
    /** Tables of readings. */
    TABLE(CsvTables.class, CsvTables::fuzzerTestOneInput, 4000, "readings and sound levels as tables");

    private final Class<?> reader;
    private final Consumer<byte[]> reading;
    private final int longestBytes;
    private final String about;

    Target(Class<?> reader, Consumer<byte[]> reading, int longestBytes, String about) {
        this.reader = reader;
        this.reading = reading;
        this.longestBytes = longestBytes;
        this.about = about;
    }

    /** Returns the target that a word of the command line means. */
    static Optional<Target> named(String word) {
        return Arrays.stream(values())
                .filter(target -> target.word().equals(word))
                .findFirst();
    }

    /** Returns what it is called on the command line, in file names, and as a test. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns the class that the fuzzer calls. */
    Class<?> reader() {
        return reader;
    }

    /** Reads one input; throws for everything that its reader does not declare. */
    void read(byte[] input) {
        reading.accept(input);
    }

    /** Returns the length of inputs in bytes up to which the fuzzer goes. */
    int longestBytes() {
        return longestBytes;
    }

    /** Returns what it reads. */
    String about() {
        return about;
    }
}
