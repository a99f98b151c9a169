"use client";

export { GlobalTrouble as default } from "#lib/ui/global-trouble.client.tsx";
