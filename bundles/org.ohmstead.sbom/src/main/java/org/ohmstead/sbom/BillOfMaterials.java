// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sbom;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cyclonedx.exception.GeneratorException;
import org.cyclonedx.exception.ParseException;
import org.cyclonedx.parsers.JsonParser;

/**
 * Writes what the built products consist of as a CycloneDX file. Started by {@code product/ohmstead sbom}.
 *
 * <p>Exit code 0 where the file is whole and agrees with the list of third-party software, 1 where it does not, 2 for wrong words, 4
 * where it could not be made.
 */
public final class BillOfMaterials {
    private static final System.Logger LOG = System.getLogger("sbom");
    private static final int DIFFERS = 1;
    private static final int WRONG_USAGE = 2;
    private static final int FAILED = 4;
    private static final int FEWEST = 3;

    private BillOfMaterials() {}

    /**
     * Runs it.
     *
     * @param arguments the list of third-party software, the file to be written, and the folders of products
     */
    public static void main(String[] arguments) {
        System.exit(run(arguments));
    }

    static int run(String... arguments) {
        if (arguments.length < FEWEST) {
            LOG.log(
                    System.Logger.Level.ERROR,
                    "needed are: THIRD-PARTY.md, the file to be written, and the products' folders.");
            return WRONG_USAGE;
        }
        try {
            Path file = Path.of(arguments[1]);
            List<Path> products = Arrays.stream(arguments).skip(2).map(Path::of).toList();
            List<String> faults = write(Path.of(arguments[0]), file, products);
            faults.forEach(fault -> LOG.log(System.Logger.Level.ERROR, fault));
            return faults.isEmpty() ? 0 : DIFFERS;
        } catch (IOException | GeneratorException failure) {
            LOG.log(System.Logger.Level.ERROR, "the list of parts could not be made: " + failure);
            return FAILED;
        }
    }

    /** Writes the file and returns what is wrong with it, in sentences. */
    static List<String> write(Path thirdParty, Path file, List<Path> products) throws IOException, GeneratorException {
        Bill bill = new Bill(Work.all(), ThirdParty.read(thirdParty))
                .with(ShippedJar.of(products).values());
        String json = bill.json();
        Files.writeString(file, json, StandardCharsets.UTF_8);
        List<String> faults = new ArrayList<>(bill.faults());
        for (ParseException deviation : new JsonParser().validate(json.getBytes(StandardCharsets.UTF_8), Bill.FORM)) {
            faults.add(file + " is not what CycloneDX wants: " + deviation.getMessage());
        }
        LOG.log(System.Logger.Level.INFO, file + " lists " + bill.size() + " parts.");
        return faults;
    }
}
