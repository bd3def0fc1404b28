// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.CsvDialect;
import org.ohmstead.exchange.EntrySource;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.LogLines;
import org.ohmstead.exchange.LogWorkbook;
import org.ohmstead.exchange.ReadingsCsv;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.report.LogJson;
import org.ohmstead.report.ReportException;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the log out for other programs. */
@Command(
        name = "export",
        description = {
            "Write the log out for other programs:%n"
                    + "  csv    a row for each channel of each reading, units in the headings: UTF-8, commas, decimal points, quoting%n"
                    + "         and line ends by RFC 4180; with --decimal-comma semicolons and decimal commas, named in the first line%n"
                    + "  xlsx   a workbook with readings, sweep levels and figures%n"
                    + "  json   every entry as a line of JSON, its content as an object%n"
                    + "  jsonl  every entry exactly as it is stored, with its chain, to be verified or joined elsewhere",
            "",
            "A text that a spreadsheet would take for a formula gets an apostrophe in front; an import takes it away again.",
            ""
        },
        footer = {"", "Example: ohmstead log export csv kestrel.ohmstead --output readings.csv"})
final class LogExportCommand implements Callable<Integer> {
    private final Console console;

    /** What to write. */
    enum Form {
        CSV,
        XLSX,
        JSON,
        JSONL
    }

    @Mixin
    private HelpOption help;

    @Parameters(index = "0", paramLabel = "FORM", description = "csv, xlsx, json or jsonl.")
    private Form form;

    @Parameters(index = "1", paramLabel = "PROJECT", description = "The project's folder or its project.json.")
    private Path project;

    @Option(
            names = "--output",
            paramLabel = "FILE",
            description = "Where to write it; without it to standard output. A workbook needs it.")
    private Path output;

    @Option(
            names = "--decimal-comma",
            description =
                    "Of csv: semicolon between cells, decimal comma, byte order mark, for spreadsheets set to a language that"
                            + " writes numbers so.")
    private boolean decimalComma;

    LogExportCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (decimalComma && form != Form.CSV) {
            throw new InputException("Only csv is written with decimal commas; leave --decimal-comma out.");
        }
        if (form == Form.XLSX && output == null) {
            throw new InputException("A workbook goes into a file. Name it with --output.");
        }
        ProjectFolder folder = ProjectFolder.open(project);
        Optional<String> fault;
        try (TestLog log = folder.readLog()) {
            fault = LogTrust.fault(log).map(Hints::withVerify);
            if (output == null) {
                try (OutputStream out = new ConsoleLines(console)) {
                    write(log, folder, out);
                }
            } else {
                write(log, folder);
            }
        }
        fault.ifPresent(console::message);
        return fault.isPresent() ? ExitCodes.BAD_INPUT : ExitCodes.DONE;
    }

    private CsvDialect dialect() {
        return decimalComma ? CsvDialect.SEMICOLON : CsvDialect.COMMA;
    }

    private static LogLines.Head head(ProjectFolder folder) {
        return new LogLines.Head(folder.project().title(), Ohmstead.version(), now());
    }

    private static Instant now() {
        return Instant.now().truncatedTo(ChronoUnit.SECONDS);
    }

    private void write(TestLog log, ProjectFolder folder, OutputStream out)
            throws IOException, ExchangeException, TestLogException {
        if (form == Form.JSONL) {
            LogLines.write(log, head(folder), out);
            return;
        }
        Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        if (form == Form.CSV) {
            ReadingsCsv.write(EntrySource.of(log, LogQuery.everything()), dialect(), text);
        } else {
            LogJson.write(log.entries(LogQuery.everything()), text);
        }
        text.flush();
    }

    private void write(TestLog log, ProjectFolder folder) throws ExchangeException, ReportException, TestLogException {
        EntrySource entries = EntrySource.of(log, LogQuery.everything());
        switch (form) {
            case CSV -> ReadingsCsv.write(entries, dialect(), output);
            case XLSX -> LogWorkbook.write(
                    entries,
                    new LogWorkbook.About(folder.project().title(), Ohmstead.version(), now(), log.headHash()),
                    output);
            case JSONL -> LogLines.write(log, head(folder), output);
            default -> LogJson.write(log.entries(LogQuery.everything()), output);
        }
    }
}
