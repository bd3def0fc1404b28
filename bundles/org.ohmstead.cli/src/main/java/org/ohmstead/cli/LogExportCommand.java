// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.report.LogCsv;
import org.ohmstead.report.LogJson;
import org.ohmstead.report.ReportException;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the log out for other programs. */
@Command(
        name = "export",
        description = {
            "Write the log out as CSV (one row for each channel of each reading, units in the headers) or as JSON (every entry whole).",
            ""
        },
        footer = {"", "Example: ohmstead log export csv kestrel.ohmstead --output readings.csv"})
final class LogExportCommand implements Callable<Integer> {
    private final Console console;

    /** What to write. */
    enum Form {
        CSV,
        JSON
    }

    @Mixin
    private HelpOption help;

    @Parameters(index = "0", paramLabel = "FORM", description = "csv or json.")
    private Form form;

    @Parameters(index = "1", paramLabel = "PROJECT", description = "The project's folder or its project.json.")
    private Path project;

    @Option(names = "--output", paramLabel = "FILE", description = "Where to write it; without it to standard output.")
    private Path output;

    LogExportCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        List<LogEntry> entries;
        Optional<String> fault;
        try (TestLog log = ProjectFolder.open(project).readLog()) {
            fault = LogTrust.fault(log).map(Hints::withVerify);
            entries = log.entries(LogQuery.everything());
        }
        if (output == null) {
            StringBuilder text = new StringBuilder();
            write(entries, text);
            console.raw(text.toString());
        } else if (form == Form.CSV) {
            LogCsv.write(entries, output);
        } else {
            LogJson.write(entries, output);
        }
        fault.ifPresent(console::message);
        return fault.isPresent() ? ExitCodes.BAD_INPUT : ExitCodes.DONE;
    }

    private void write(List<LogEntry> entries, Appendable text) throws IOException, ReportException {
        if (form == Form.CSV) {
            LogCsv.write(entries, text);
        } else {
            LogJson.write(entries, text);
        }
    }
}
