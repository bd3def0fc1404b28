// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sbom;

import com.github.packageurl.MalformedPackageURLException;
import com.github.packageurl.PackageURL;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.cyclonedx.Version;
import org.cyclonedx.exception.GeneratorException;
import org.cyclonedx.generators.BomGeneratorFactory;
import org.cyclonedx.model.Bom;
import org.cyclonedx.model.Component;
import org.cyclonedx.model.Hash;
import org.cyclonedx.model.License;
import org.cyclonedx.model.LicenseChoice;
import org.cyclonedx.model.Metadata;

/** Makes the list of a product's parts, and finds out where it and the list that people read say different things. */
final class Bill {
    /** The form that it is written in. */
    static final Version FORM = Version.VERSION_16;

    private static final String OWN = "Ohmstead";
    private static final String OWN_LICENCE = "Apache-2.0";
    /** Licences of the list that are identifiers of SPDX as they stand; others are given as words. */
    private static final Set<String> IDENTIFIERS =
            Set.of(OWN_LICENCE, "0BSD", "BSD-2-Clause", "EPL-2.0", "LGPL-2.1-or-later", "MIT", "Unicode-3.0", "MIT-0");

    private final List<Work> works;
    private final List<ThirdParty> rows;
    private final Set<ThirdParty> used = new LinkedHashSet<>();
    private final List<String> faults = new ArrayList<>();
    private final Bom bom = new Bom();

    Bill(List<Work> works, List<ThirdParty> rows) {
        this.works = List.copyOf(works);
        this.rows = List.copyOf(rows);
        Component product = new Component();
        product.setType(Component.Type.APPLICATION);
        product.setName(OWN);
        product.setLicenses(licence(OWN_LICENCE));
        Metadata metadata = new Metadata();
        metadata.setComponent(product);
        bom.setMetadata(metadata);
    }

    /** Adds the bundles of a product, and the works of the list that are no bundles. */
    Bill with(Collection<ShippedJar> jars) {
        jars.forEach(this::add);
        for (ThirdParty row : rows) {
            if (row.work().startsWith("Open Sans")) {
                used.add(row);
                Component fonts = new Component();
                fonts.setType(Component.Type.FILE);
                fonts.setName(row.work());
                fonts.setVersion(row.version());
                fonts.setLicenses(licence(row.licence()));
                bom.addComponent(fonts);
            } else if (!used.contains(row)) {
                faults.add(
                        "THIRD-PARTY.md names " + row.work() + ", which the product does not have. Take the row out.");
            }
        }
        return this;
    }

    private void add(ShippedJar jar) {
        Optional<Work> found = Work.of(jar.bundle(), works);
        if (found.isEmpty()) {
            faults.add("The product has " + jar.bundle() + " " + jar.version()
                    + ", which works.txt does not know. Add it there, and its work to THIRD-PARTY.md.");
            return;
        }
        Work work = found.get();
        Component component = new Component();
        component.setType(Component.Type.LIBRARY);
        component.setName(jar.bundle());
        component.setBomRef(jar.bundle() + "@" + jar.version());
        jar.sha256().ifPresent(hash -> component.addHash(new Hash(Hash.Algorithm.SHA_256, hash)));
        String version = jar.mavenVersion().orElse(jar.version());
        if (work.title().equals(OWN)) {
            version = jar.version();
            component.setLicenses(licence(OWN_LICENCE));
        } else {
            Optional<ThirdParty> row = ThirdParty.about(work.title(), rows);
            if (row.isEmpty()) {
                faults.add("THIRD-PARTY.md does not name " + work.title() + ", of which the product has " + jar.bundle()
                        + " " + jar.version() + ". Add a row.");
                return;
            }
            used.add(row.get());
            version = compared(jar, row.get(), version);
            component.setLicenses(licence(row.get().licence()));
        }
        component.setVersion(version);
        component.setPurl(address(work, jar, version));
        bom.addComponent(component);
    }

    private String compared(ShippedJar jar, ThirdParty row, String version) {
        if (!row.covers(version)) {
            faults.add("THIRD-PARTY.md has version " + row.version() + " of " + row.work() + ", but the product has "
                    + jar.bundle() + " " + version + ". Correct the row.");
        }
        // The bundle's version has three numbers always; the list has the version as its makers write it.
        boolean exact = jar.mavenVersion().isEmpty()
                && row.covers(version)
                && row.version().matches("[0-9.]+");
        return exact ? row.version() : version;
    }

    private static PackageURL address(Work work, ShippedJar jar, String version) {
        try {
            return work.group().isEmpty()
                    ? new PackageURL("generic", null, jar.bundle(), version, null, null)
                    : new PackageURL("maven", work.group(), work.artifactOf(jar.bundle()), version, null, null);
        } catch (MalformedPackageURLException odd) {
            throw new IllegalStateException("works.txt has an impossible name for " + jar.bundle(), odd);
        }
    }

    private static LicenseChoice licence(String written) {
        License licence = new License();
        if (IDENTIFIERS.contains(written)) {
            licence.setId(written);
        } else {
            licence.setName(written);
        }
        LicenseChoice choice = new LicenseChoice();
        choice.addLicense(licence);
        return choice;
    }

    /** Returns where the product and the list differ, one sentence each. */
    List<String> faults() {
        return List.copyOf(faults);
    }

    /** Returns how many parts there are. */
    int size() {
        return bom.getComponents().size();
    }

    /** Returns it as CycloneDX. */
    String json() throws GeneratorException {
        return BomGeneratorFactory.createJson(FORM, bom).toJsonString(true) + "\n";
    }
}
