// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.load.NotationException;
import org.ohmstead.load.Stock;
import org.ohmstead.load.StockNotation;
import org.ohmstead.model.Part;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.StockFile;
import picocli.CommandLine.Option;

/** The resistors that a word may use. */
final class StockOption {
    private static final List<String> FILE_ENDINGS = List.of(".json", ".csv", ".ohmstead", ".ohmstead/");

    @Option(names = "--stock", paramLabel = "STOCK", descriptionKey = "stock.stock")
    private String stock;

    @Option(
            names = "--tolerance-percent",
            paramLabel = "P",
            defaultValue = "5",
            descriptionKey = "stock.tolerance-percent")
    private String tolerance;

    /** Returns whether one was named. */
    boolean given() {
        return stock != null;
    }

    /** Returns the tolerance of values that state none, as a ratio. */
    double toleranceRatio() throws InputException {
        return Quantities.ratio(tolerance, "--tolerance-percent");
    }

    /** Reads the stock. */
    Stock read() throws InputException, NotationException, ProjectFileException {
        if (stock == null) {
            throw new InputException(Texts.of("stock.none"));
        }
        return isFile(stock) ? ofFile(Path.of(stock)) : StockNotation.parse(stock, toleranceRatio());
    }

    /** Reads the stock of a project or a file of parts. */
    static Stock ofFile(Path file) throws ProjectFileException, InputException {
        boolean project = Files.isDirectory(file) || file.endsWith("project.json");
        List<Part> parts = project ? ProjectFolder.open(file).project().bench().parts() : StockFile.read(file);
        if (parts.isEmpty()) {
            throw new InputException(Texts.of("stock.empty", file));
        }
        return Stock.of(parts);
    }

    private static boolean isFile(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        return FILE_ENDINGS.stream().anyMatch(lower::endsWith) || !text.contains(",") && Files.exists(Path.of(text));
    }
}
