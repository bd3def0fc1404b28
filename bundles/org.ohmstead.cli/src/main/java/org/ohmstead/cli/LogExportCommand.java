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
        description = {"${bundle:log.export.does}", "", "${bundle:log.export.more}", ""},
        footer = {"", "${bundle:log.export.example}"})
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

    @Parameters(index = "0", paramLabel = "FORM", descriptionKey = "log.export.FORM")
    private Form form;

    @Parameters(index = "1", paramLabel = "PROJECT", descriptionKey = "log.export.PROJECT")
    private Path project;

    @Option(names = "--output", paramLabel = "FILE", descriptionKey = "log.export.output")
    private Path output;

    @Option(names = "--decimal-comma", descriptionKey = "log.export.decimal-comma")
    private boolean decimalComma;

    LogExportCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (decimalComma && form != Form.CSV) {
            throw new InputException(Texts.of("export.comma"));
        }
        if (form == Form.XLSX && output == null) {
            throw new InputException(Texts.of("export.workbook"));
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
            case XLSX ->
                LogWorkbook.write(
                        entries,
                        new LogWorkbook.About(folder.project().title(), Ohmstead.version(), now(), log.headHash()),
                        output);
            case JSONL -> LogLines.write(log, head(folder), output);
            default -> LogJson.write(log.entries(LogQuery.everything()), output);
        }
    }
}
