// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.ExchangeProgress;
import org.ohmstead.exchange.PackLimits;
import org.ohmstead.exchange.ProjectPack;

/**
 * A packed project. An input that begins as a zip file is read as it is; of any other, a zip file with a true manifest is made, of files
 * that stand in it one after the other: name, line feed, content, form feed. Whatever comes, nothing may be left but a whole project in
 * its place, or nothing at all.
 */
public final class ProjectPacks {
    private static final PackLimits LIMITS = new PackLimits(100, 1 << 20, 4 << 20, 200, 1 << 18);
    private static final String PROJECT = "project";
    private static final String PACK = "pack.zip";

    private ProjectPacks() {}

    /** Unpacks any bytes. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        Path folder = Desk.emptyFolder("unpack");
        Path file = Desk.file("unpack/" + PACK, Zip.raw(input) ? input : made(Demand.text(input)));
        ExchangeProgress quiet = new ExchangeProgress() {
            @Override
            public void step(long done, long all, String what) {
                Demand.that(done <= all, "more steps than there are");
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        };
        try {
            ProjectPack.unpack(file, folder.resolve(PROJECT), LIMITS, quiet);
            Demand.that(Desk.names(folder).equals(List.of(PACK, PROJECT)), "beside the project: " + Desk.names(folder));
            Demand.that(Files.isRegularFile(folder.resolve(PROJECT).resolve("project.json")), "no project");
        } catch (ExchangeException e) {
            Demand.said(e);
            Demand.that(Desk.names(folder).equals(List.of(PACK)), "refused, but left behind: " + Desk.names(folder));
        } catch (CancellationException e) {
            throw new AssertionError("nobody cancelled", e);
        }
    }

    private static byte[] made(String input) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (String file : input.split("\f", 20)) {
            int end = file.indexOf('\n');
            String name = end < 0 ? file : file.substring(0, end);
            files.put(
                    name.length() > 200 ? name.substring(0, 200) : name,
                    file.substring(end + 1).getBytes(StandardCharsets.UTF_8));
        }
        Zip zip = new Zip();
        StringBuilder listed = new StringBuilder();
        files.forEach((name, content) -> {
            zip.with(name, content);
            if (!name.endsWith("/")) {
                listed.append(listed.length() == 0 ? "" : ",").append(listed(name, content));
            }
        });
        if (!files.containsKey("manifest.json")) {
            zip.with("manifest.json", manifest(listed.toString()).getBytes(StandardCharsets.UTF_8));
        }
        return zip.made();
    }

    private static String listed(String name, byte[] content) {
        StringBuilder quoted = new StringBuilder();
        for (char letter : name.toCharArray()) {
            quoted.append(
                    letter < ' ' || letter == '"' || letter == '\\' ? String.format("\\u%04x", (int) letter) : letter);
        }
        return "{\"name\":\"" + quoted + "\",\"bytes\":" + content.length + ",\"sha256\":\"" + sha256(content) + "\"}";
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String manifest(String files) {
        return "{\"format\":\"ohmstead-project\",\"formatVersion\":1,\"softwareVersion\":\"0\","
                + "\"packedAt\":\"2026-11-27T00:00:00Z\",\"title\":\"A\",\"headHash\":\"" + "0".repeat(64)
                + "\",\"entries\":0,\"files\":[" + files + "]}";
    }
}
